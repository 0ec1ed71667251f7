'use client'
import { useState } from 'react'
import type { Tone } from '@/lib/session/session'
import { channelsNow } from '@/lib/session/who'
import type { SetFeed } from '../set-feed'
import { DEVICE_ALARM } from './device-alarm'
import { askToNotify } from './notify'
import { lengthS, TONES } from './tones'

const ORDER: readonly Tone[] = ['standby', 'roll', 'trouble']
const PAUSE_MS = 700
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** Where the check stands: which tone plays, whether all have played, what the holder answered. */
type Step = 'start' | Tone | 'ask' | 'heard' | 'not-heard' | 'not-kept' | 'no-sound' | 'rolls'

/** Before the first call each phone plays its tones once and its holder says whether they were heard; the log keeps it. */
export function SoundCheck({ feed }: { feed: SetFeed }) {
  const [step, setStep] = useState<Step>('start')
  const play = async () => {
    if (!channelsNow(feed.snapshot().session).includes('sound')) return setStep('rolls')
    const isOpen = await DEVICE_ALARM.tones.unlock()
    void askToNotify()
    if (!isOpen) return setStep('no-sound')
    for (const tone of ORDER) {
      setStep(tone)
      DEVICE_ALARM.tones.play(tone)
      DEVICE_ALARM.shake(tone)
      await pause(lengthS(TONES[tone]) * 1000 + PAUSE_MS)
    }
    setStep('ask')
  }
  const answer = (heard: boolean) => {
    const text = heard ? 'Sound check: heard all three tones.' : 'Sound check: did not hear the tones.'
    feed.add({ kind: 'note', text }).then(
      () => setStep(heard ? 'heard' : 'not-heard'),
      () => setStep('not-kept'),
    )
  }
  const isPlaying = ORDER.some((tone) => tone === step)
  return (
    <section className="sound-check" aria-label="Sound check">
      <h2>Sound check</h2>
      <p role="status">{wordsOf(step)}</p>
      {step === 'ask' ? (
        <div className="thumb two">
          <button type="button" onClick={() => answer(true)}>
            Heard all three
          </button>
          <button type="button" onClick={() => answer(false)}>
            Not heard
          </button>
        </div>
      ) : (
        <div className="thumb">
          <button type="button" disabled={isPlaying} onClick={() => void play()}>
            {step === 'start' ? 'Play the three tones' : 'Play them again'}
          </button>
        </div>
      )}
    </section>
  )
}

function wordsOf(step: Step): string {
  switch (step) {
    case 'start':
      return 'Hear the three tones once before the first call, with the volume up.'
    case 'ask':
      return 'Did you hear all three?'
    case 'heard':
      return 'Heard. It stands in the log.'
    case 'not-heard':
      return 'Turn the volume up and silent mode off, then play them again.'
    case 'not-kept':
      return 'This phone could not store your answer. It may be full: make room, then play them again.'
    case 'no-sound':
      return 'This browser lets no sound out. Alerts show on the screen, and the phone shakes where it can.'
    case 'rolls':
      return 'A take rolls: no sound now. Try after it.'
    default:
      return TONES[step].words
  }
}
