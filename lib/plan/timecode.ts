import { type Seconds, seconds } from '../units'
import { quoted } from './nearest'

/**
 * Timecode of film and video. Drop-frame leaves labels out, never frames: ;00 and ;01 (at 59.94 ;00 to ;03) of each
 * minute but every tenth.
 *
 * Source: SMPTE ST 12-1, drop-frame counting; its worked values stand in tests/fixtures/published/timecode.json.
 */
declare const frame: unique symbol
/** Frames counted from 00:00:00:00. */
export type Frames = number & { readonly [frame]: 'frames' }
export const frames = (n: number) => n as Frames

interface RateFacts {
  /** Labels in a second. */
  readonly labels: number
  /** Frames take so many seconds: 1001/30000 where "29.97" is said. */
  readonly frameS: number
  /** Labels that a dropping minute leaves out. */
  readonly dropped: number
}
const whole = (labels: number): RateFacts => ({ labels, frameS: 1 / labels, dropped: 0 })
const slowed = (labels: number, dropped = 0): RateFacts => ({ labels, frameS: 1001 / (1000 * labels), dropped })
const RATE_FACTS = {
  '23.976': slowed(24),
  '24': whole(24),
  '25': whole(25),
  '29.97': slowed(30),
  '29.97 drop': slowed(30, 2),
  '30': whole(30),
  '50': whole(50),
  '59.94': slowed(60),
  '59.94 drop': slowed(60, 4),
  '60': whole(60),
} as const satisfies Record<string, RateFacts>
export type FrameRate = keyof typeof RATE_FACTS
/** In order of speed. */
export const FRAME_RATES = [
  '23.976',
  '24',
  '25',
  '29.97',
  '29.97 drop',
  '30',
  '50',
  '59.94',
  '59.94 drop',
  '60',
] as const satisfies readonly FrameRate[]
/** Frames in a second of true time. */
export const framesPerSecond = (rate: FrameRate) => 1 / RATE_FACTS[rate].frameS

const perMinute = ({ labels, dropped }: RateFacts) => 60 * labels - dropped
/** The tenth minute drops nothing. */
const perTenMinutes = ({ labels, dropped }: RateFacts) => 600 * labels - 9 * dropped
/** Labels begin anew after this many. */
export const framesInDay = (rate: FrameRate) => frames(144 * perTenMinutes(RATE_FACTS[rate]))

export type ReadTimecode =
  | { readonly ok: true; readonly frames: Frames }
  | { readonly ok: false; readonly sentence: string }

const LABEL = /^\s*(\d{1,2}):(\d{2}):(\d{2})([:;.])(\d{2})\s*$/

/** The frame that a label names; a label that does not exist at this rate is refused. */
export function readTimecode(label: unknown, rate: FrameRate): ReadTimecode {
  const no = (sentence: string): ReadTimecode => ({ ok: false, sentence })
  const facts: RateFacts = RATE_FACTS[rate]
  const last = facts.labels - 1
  const example = `01:00:00${facts.dropped > 0 ? ';' : ':'}00`
  const right = `Write hours, minutes, seconds and frames, "${example}".`
  if (label === undefined) return no(`A timecode is missing here. ${right}`)
  const found = typeof label === 'string' ? LABEL.exec(label) : null
  if (!found) return no(`${quoted(label)} is no timecode. ${right}`)
  const [h, m, s, f] = [found[1], found[2], found[3], found[5]].map(Number) as [number, number, number, number]
  if (h > 23 || m > 59 || s > 59) return no(`There is no ${quoted(label)} in a day of 24 hours. ${right}`)
  if (f > last)
    return no(`${quoted(label)} names frame ${f}; at ${rate} they run from 00 to ${last}. Write one of these.`)
  if (found[4] === ';' && facts.dropped === 0)
    return no(
      `A semicolon marks drop-frame, and the rate is ${rate}. Write "${String(label).trim().replace(';', ':')}".`,
    )
  if (facts.dropped > f && s === 0 && m % 10 !== 0)
    return no(
      `Drop-frame leaves ${quoted(label)} out: each minute but every tenth begins at frame ${two(facts.dropped)}. Write "${two(h)}:${two(m)}:00;${two(facts.dropped)}".`,
    )
  return { ok: true, frames: frameOf(h, m, s, f, facts) }
}
function frameOf(h: number, m: number, s: number, f: number, facts: RateFacts): Frames {
  const minute = 60 * h + m
  const left = facts.dropped * (minute - Math.floor(minute / 10))
  return frames((60 * minute + s) * facts.labels + f - left)
}

const two = (n: number) => String(n).padStart(2, '0')

/** The label of a frame; labels begin anew after 24 hours of them, also backwards. */
export function printTimecode(at: Frames, rate: FrameRate): string {
  const facts: RateFacts = RATE_FACTS[rate]
  const n = labelNumber(inDay(at, rate), facts)
  const s = Math.floor(n / facts.labels)
  const parts = [Math.floor(s / 3600), Math.floor(s / 60) % 60, s % 60].map(two).join(':')
  return `${parts}${facts.dropped > 0 ? ';' : ':'}${two(n % facts.labels)}`
}
/** The frame's number with the labels counted that were left out before it. */
function labelNumber(at: Frames, facts: RateFacts): number {
  const tens = Math.floor(at / perTenMinutes(facts))
  const rest = at % perTenMinutes(facts)
  const first = 60 * facts.labels
  const minutes = rest < first ? 0 : 1 + Math.floor((rest - first) / perMinute(facts))
  return at + facts.dropped * (9 * tens + minutes)
}
/** Within one day of labels. */
export function inDay(at: Frames, rate: FrameRate): Frames {
  const day = framesInDay(rate)
  return frames(((at % day) + day) % day)
}

/** True time that so many frames take; 108 000 of "29.97" are an hour on the label and 3603.6 s on the clock. */
export const timeOfFrames = (count: Frames, rate: FrameRate): Seconds => seconds(count * RATE_FACTS[rate].frameS)
/** Whole frames begun in a stretch of true time; a thousandth of a frame is for rounding. */
export const framesOfTime = (time: Seconds, rate: FrameRate): Frames =>
  frames(Math.floor(time / RATE_FACTS[rate].frameS + 1e-3))

/**
 * The frame nearest to what a person read off a camera ("16:05:12:10", with ; or . or without frames): they may have read a
 * clock of another rate, so a label that does not exist here is the next that does.
 */
export function nearestFrame(read: string, rate: FrameRate): Frames {
  const facts: RateFacts = RATE_FACTS[rate]
  const [h = 0, m = 0, s = 0] = read.split(/[:;.]/).map(Number)
  const part = /([:;.])(\d{2,3})$/.exec(read.slice(8))
  const share = part?.[2]?.length === 3 ? Math.floor((Number(part[2]) / 1000) * facts.labels) : Number(part?.[2] ?? 0)
  const f = Math.min(share, facts.labels - 1)
  const skipped = s === 0 && m % 10 !== 0 && f < facts.dropped
  return frameOf(h, m, s, skipped ? facts.dropped : f, facts)
}
