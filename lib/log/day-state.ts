import type { MomentId } from '../model/moment-ids'
import type { Celsius, Instant } from '../units'
import type { CorrectionTold, Timed } from './corrections'
import type { CallProgress, EntryOf } from './entry'
import type { EntryId } from './entry-id'
import type { Skew } from './skew'

/** What a log folds to. Instants are by the server's clock. */

export interface Read {
  readonly at: Instant
  readonly temp: Celsius
  readonly id: EntryId
  readonly hand: boolean
}
/** A probe of a cook: where it stands, and what it has read. `placed` counts the places it has stood in. */
export interface Probe {
  readonly cook: string
  readonly sensor: string
  readonly placed: number
  readonly out: boolean
  readonly wrong: boolean
  /** Only what it read in the meat, and while nobody called it wrong. */
  readonly readings: readonly (Read & { readonly placed: number })[]
  /** The last it said at all. */
  readonly last: Read | null
}
/** `others`: later marks of the same moment; the earliest counts. */
export interface Mark {
  readonly cook: string
  readonly moment: MomentId
  readonly at: Instant
  readonly id: EntryId
  readonly device: string
  readonly others: readonly { readonly at: Instant; readonly device: string }[]
}
export interface ShotState {
  readonly state: CallProgress
  /** As it was said with it: a re-plan says so. */
  readonly why?: string | undefined
  readonly since: Instant
}
/** The answers to one call or alert, in order. */
export interface Answer {
  readonly answer: EntryOf<'call-answer'>['answer']
  readonly person: string | null
  readonly at: Instant
  readonly to: string | null
}
export interface Take {
  readonly shot: string | null
  readonly slate: string | null
  readonly take: number
  readonly camera: string
  readonly from: Instant | null
  readonly to: Instant | null
  readonly rolling: boolean
  readonly timecode: string | null
  readonly verdict: 'good' | 'no-good' | 'hold' | null
  readonly notes: readonly string[]
}
/** What a camera's timecode was at an instant. */
export interface ClockReading {
  readonly at: Instant
  readonly timecode: string
}
export interface Span {
  readonly cook: string
  readonly from: Instant
  readonly to: Instant | null
  readonly in: string
}

export interface FoodPlace {
  readonly is: EntryOf<'food'>['is']
  readonly at: Instant
  readonly times: number
}

export interface DayState {
  readonly probes: Readonly<Record<string, Probe>>
  /** By "cook/moment". */
  readonly marks: Readonly<Record<string, Mark>>
  readonly shots: Readonly<Record<string, ShotState>>
  /** By call or alert. */
  readonly answers: Readonly<Record<string, readonly Answer[]>>
  readonly takes: readonly Take[]
  readonly notes: readonly Timed<EntryOf<'note'>>[]
  readonly holds: readonly Span[]
  /** By cook: since when the food stands out, or where it went; `times` counts how often it came out. */
  readonly food: Readonly<Record<string, FoodPlace>>
  readonly fire: readonly Timed<EntryOf<'fire'>>[]
  readonly meals: readonly Timed<EntryOf<'meal'>>[]
  readonly late: readonly Timed<EntryOf<'late'>>[]
  readonly changes: readonly Timed<EntryOf<'plan-change'> | EntryOf<'what-if-adopted'>>[]
  /** By camera, each time its clock was read, in order. */
  readonly cameraClocks: Readonly<Record<string, readonly ClockReading[]>>
  readonly corrections: readonly CorrectionTold[]
  readonly skews: Readonly<Record<string, Skew>>
  /** What the merge decided, in words: two marks of one moment, clocks that run wrong, corrections that wait. */
  readonly told: readonly string[]
}
