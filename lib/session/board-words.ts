import { formatDuration, formatTemp, type Instant, instant, type Seconds, seconds, type UnitSystem } from '../units'
import type { Duty } from './board-view'

/** The sentences of the set board: what the count runs to, and what this person must do. */

const placeWords = (place: string | null) => (place === null ? '' : ` at the ${place.replace(/^the /i, '')}`)
const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

/** The line above the count. */
export function countLead({ until, state, moment, place, kind }: Duty, now: Instant): string {
  if (until === null) return 'no time is known yet'
  const come = now >= until.at
  if (until.what === 'stand by') return `stand by${placeWords(place)}${come ? ' from' : ' in'}`
  if (until.what === 'moment') return `${moment?.name ?? 'it'}${come ? ', any moment' : ', in about'}`
  if (until.what === 'be there') return `be${placeWords(place) || ' there'} in`
  if (until.what === 'roll') return `set up${placeWords(place)}; roll in`
  if (until.what === 'end')
    return kind === 'meal' ? 'the meal ends in' : `${state === 'roll' ? 'rolling; ' : ''}ends in`
  return 'begins in'
}

/** One sentence or two: where, with what, and what would call sooner. */
export function doWords(duty: Duty, units: UnitSystem): string {
  const { kind, camera, inShot, place, until } = duty
  if (kind === 'meal') return 'Eat. Somebody stays in sight of a burning fire.'
  if (kind === 'task') return 'It goes by the clock.'
  const where = placeWords(place)
  const who =
    camera !== null ? `Camera ${camera}${where}` : inShot ? `You are in shot${where}` : `Be${where || ' there'}`
  return [`${who}.`, hintWords(duty, units, until?.what ?? null)].filter(Boolean).join(' ')
}

function hintWords(
  { state, trigger, follows, roll, why, camera }: Duty,
  units: UnitSystem,
  until: string | null,
): string {
  if (state === 'ahead' && trigger !== null) return `Go earlier if the probe reads ${formatTemp(trigger, units)}.`
  if (state === 'ahead' && follows !== null)
    return follows.after < 60
      ? `It follows ${follows.name}.`
      : `Called ${formatDuration(follows.after)} after ${follows.name}.`
  if (roll && camera !== null && (state === 'standby' || state === 'roll'))
    return `Roll ${formatDuration(roll.before)} before; hold ${formatDuration(roll.after)} after.`
  if (state === 'standby' && why !== null) return `Called: ${lower(why)}.`
  return until === 'end' && state === 'standby' ? 'Say when it is done.' : ''
}

/** What stands in large digits. `small` parts are units. */
export interface CountPart {
  readonly text: string
  readonly small: boolean
}
const HOUR_MIN = 60
const NEAR_MIN = 10
const MINUTES_UP_TO = 100
const HOURS_UP_TO_MIN = 48 * 60

/** "12 min" far away, "9:58" near, "2 h 05" farther, then days; "now" when it has come. */
export function countParts(at: Instant, now: Instant): readonly CountPart[] {
  const left = Math.ceil((at - now) / 1000)
  const min = Math.ceil(left / 60)
  const big = (value: number | string) => ({ text: String(value), small: false })
  const small = (text: string) => ({ text, small: true })
  if (left <= 0) return [big('now')]
  if (left < NEAR_MIN * 60) return [big(`${Math.floor(left / 60)}:${String(left % 60).padStart(2, '0')}`)]
  if (min < MINUTES_UP_TO) return [big(min), small('min')]
  if (min < HOURS_UP_TO_MIN)
    return [big(Math.floor(min / HOUR_MIN)), small('h'), big(String(min % HOUR_MIN).padStart(2, '0'))]
  return [big(Math.round(min / HOUR_MIN / 24)), small('days')]
}
/** The same to be read aloud: it does not tick by the second. */
export function countSpoken(at: Instant, now: Instant): string {
  const left: Seconds = seconds((at - now) / 1000)
  if (left <= 0) return 'now'
  return left < 60 ? 'less than a minute' : formatDuration(seconds(Math.round(left / 60) * 60))
}

const STATE_WORDS: Readonly<Record<Duty['state'], string>> = {
  ahead: 'ahead',
  standby: 'stand by',
  roll: 'roll',
  caught: 'caught',
  missed: 'missed',
  dropped: 'dropped',
  on: 'under way',
  over: 'over',
}
/** A shot whose time is over, and of which nobody told anything. */
export const NOT_TOLD = 'nothing told'
export const stateWords = (state: Duty['state']): string => STATE_WORDS[state]

/** How long ago, to the minute: "just now", "4 min ago". */
export function agoWords(at: Instant, now: Instant): string {
  const s = Math.max(0, (instant(now) - at) / 1000)
  return s < 45 ? 'just now' : `${formatDuration(seconds(Math.max(60, s)))} ago`
}
