'use client'
import { useState } from 'react'
import type { Tone } from '@/lib/session/session'
import { channelsNow } from '@/lib/session/who'
import {
  didYouHearAllThree,
  heardAllThree,
  heardItStandsInLog,
  hearThreeTonesOnceBefore,
  notHeard,
  playThemAgain,
  playThreeTones,
  soundCheck,
  soundCheckDidNotHear,
  soundCheckHeardAllThree,
  takeRollsNoSoundNow,
  thisBrowserLetsNoSound,
  thisPhoneCouldNotStore,
  turnVolumeUpAndSilent,
} from '../../words/sound'
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
    const text = heard ? soundCheckHeardAllThree : soundCheckDidNotHear
    feed.add({ kind: 'note', text }).then(
      () => setStep(heard ? 'heard' : 'not-heard'),
      () => setStep('not-kept'),
    )
  }
  const isPlaying = ORDER.some((tone) => tone === step)
  return (
    <section className="sound-check" aria-label={soundCheck}>
      <h2>{soundCheck}</h2>
      <p role="status">{wordsOf(step)}</p>
      {step === 'ask' ? (
        <div className="thumb two">
          <button type="button" onClick={() => answer(true)}>
            {heardAllThree}
          </button>
          <button type="button" onClick={() => answer(false)}>
            {notHeard}
          </button>
        </div>
      ) : (
        <div className="thumb">
          <button type="button" disabled={isPlaying} onClick={() => void play()}>
            {step === 'start' ? playThreeTones : playThemAgain}
          </button>
        </div>
      )}
    </section>
  )
}

function wordsOf(step: Step): string {
  switch (step) {
    case 'start':
      return hearThreeTonesOnceBefore
    case 'ask':
      return didYouHearAllThree
    case 'heard':
      return heardItStandsInLog
    case 'not-heard':
      return turnVolumeUpAndSilent
    case 'not-kept':
      return thisPhoneCouldNotStore
    case 'no-sound':
      return thisBrowserLetsNoSound
    case 'rolls':
      return takeRollsNoSoundNow
    default:
      return TONES[step].words
  }
}
