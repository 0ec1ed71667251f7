import { chanceOf } from '../model/random'
import { type Instant, instant, later, minutes, seconds } from '../units'
import type { Effect } from './session'

/** What somebody of a rehearsal's crew says, and when. */
export interface CrewAnswer {
  readonly at: Instant
  readonly person: string
  readonly call: string
  readonly answer: 'coming' | 'ready'
}

const STREAM = 73
/** A good crew answers within a minute, and is in place some minutes later. [estimate] */
const LEAST_S = 15
const MOST_S = 55
const READY_MIN = 6

/** How a crew that does its work answers an alert; `me` answers for themselves. */
export function crewAnswers(effect: Effect, now: Instant, seed: number, me: string | null): readonly CrewAnswer[] {
  if (effect.do !== 'sound-alert' || effect.tone === 'roll') return []
  const asked = effect.tone === 'standby' ? effect.to : [effect.owner]
  return asked.flatMap((person, i): CrewAnswer[] => {
    if (person === me) return []
    const { uniform } = chanceOf(seed, textSeed(effect.key) + i, STREAM)
    const coming = later(now, seconds(Math.round(LEAST_S + (MOST_S - LEAST_S) * uniform())))
    const said = { person, call: effect.call }
    if (effect.tone !== 'standby') return [{ ...said, at: coming, answer: 'coming' }]
    const ready = instant(Math.max(coming + 1000, Math.min(later(coming, minutes(READY_MIN)), effect.deadline)))
    return [
      { ...said, at: coming, answer: 'coming' },
      { ...said, at: ready, answer: 'ready' },
    ]
  })
}

const textSeed = (text: string) => [...text].reduce((sum, letter) => (31 * sum + letter.charCodeAt(0)) | 0, 7)
