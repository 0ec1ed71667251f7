import type { Tone } from '@/lib/session/session'

/** A tone of the set, told from the others by rhythm and by pitch, and by how it shakes. */
export interface ToneScore {
  /** How the crew is told it at the sound check. */
  readonly words: string
  readonly wave: OscillatorType
  readonly notes: readonly { readonly atS: number; readonly forS: number; readonly hz: number }[]
  /** Shaken and still in turn, ms. */
  readonly shake: readonly number[]
}

const row = (count: number, everyS: number, forS: number, ...hz: readonly number[]) =>
  Array.from({ length: count }, (_, i) => ({ atS: i * everyS, forS, hz: hz[i % hz.length] as number }))

export const TONES: Readonly<Record<Tone, ToneScore>> = {
  standby: {
    words: 'Standby: two long notes, rising, twice',
    wave: 'sine',
    notes: [...row(2, 0.5, 0.45, 523, 784), ...row(2, 0.5, 0.45, 523, 784).map((n) => ({ ...n, atS: n.atS + 1.4 }))],
    shake: [500, 200, 500],
  },
  roll: {
    words: 'Roll: six quick high notes',
    wave: 'triangle',
    notes: row(6, 0.18, 0.1, 1568),
    shake: [100, 80, 100, 80, 100, 80, 100],
  },
  trouble: {
    words: 'Trouble: high and low in turn, harsh, eight times',
    wave: 'square',
    notes: row(8, 0.3, 0.26, 880, 440),
    shake: [800, 150, 200, 150, 800],
  },
}

export const lengthS = ({ notes }: ToneScore) => Math.max(...notes.map(({ atS, forS }) => atS + forS))
