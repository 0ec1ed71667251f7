import type { Tone } from '@/lib/session/session'
import { lengthS, TONES } from './tones'

/** Loud, short of the clipping of small speakers. */
const LEVEL = { sine: 0.8, triangle: 0.9, square: 0.35, sawtooth: 0.35, custom: 0.5 } as const
const RAMP_S = 0.012

/** The device's own sound, made on the spot; a browser lets it out only after a tap. */
export class Sound {
  #context: AudioContext | null = null
  #playing: AudioScheduledSourceNode[] = []

  /** Called in a tap. True where sound comes out from now on. */
  async unlock(): Promise<boolean> {
    if (typeof AudioContext === 'undefined') return false
    this.#context ??= new AudioContext()
    await this.#context.resume().catch(() => {})
    return this.isUnlocked
  }
  get isUnlocked(): boolean {
    return this.#context?.state === 'running'
  }

  /** How long it sounds, s; 0 where it does not. */
  play(tone: Tone): number {
    const context = this.#context
    if (context?.state !== 'running') return 0
    this.hush()
    const { wave, notes } = TONES[tone]
    this.#playing = notes.map(({ atS, forS, hz }) => {
      const [from, to] = [context.currentTime + atS, context.currentTime + atS + forS]
      const [note, level] = [context.createOscillator(), context.createGain()]
      note.type = wave
      note.frequency.value = hz
      level.gain.setValueAtTime(0, from)
      level.gain.linearRampToValueAtTime(LEVEL[wave], from + RAMP_S)
      level.gain.setValueAtTime(LEVEL[wave], to - RAMP_S)
      level.gain.linearRampToValueAtTime(0, to)
      note.connect(level).connect(context.destination)
      note.start(from)
      note.stop(to)
      return note
    })
    return lengthS(TONES[tone])
  }
  hush(): void {
    for (const note of this.#playing) note.disconnect()
    this.#playing = []
  }
}
