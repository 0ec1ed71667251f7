import type { LidOpening } from '../model/cook'
import type { MomentId } from '../model/moment-ids'
import type { Seconds } from '../units'

/** A time of day as it leaves the core: ISO 8601 with the shoot's offset, to the minute or second. */
export type IsoTime = string

/** What tells the crew to come. `probe`: as soon as the probe reads it. */
export interface Call {
  readonly id: string
  /** The shot it calls for. */
  readonly for: string
  readonly moment: MomentId | null
  readonly cook: string | null
  /** Planned standby, from the likely time; null where the moment may never come. */
  readonly standby: IsoTime | null
  readonly window: { readonly early: IsoTime | null; readonly likely: IsoTime | null; readonly late: IsoTime | null }
  /** °C at the probe that keeps the lead time with 95 %; null where the clock or an earlier moment calls. */
  readonly trigger: { readonly cook: string; readonly probe: number } | null
  /** Where an earlier moment calls: so many seconds after it ("15 min after off the heat"). */
  readonly follows: { readonly moment: MomentId; readonly after: Seconds } | null
  readonly people: readonly string[]
}
export interface PlacedShot {
  readonly id: string
  /** Setup begins. */
  readonly setupStart: IsoTime
  /** The camera rolls; the likely times for a shot at a moment. */
  readonly start: IsoTime
  readonly end: IsoTime
  readonly people: readonly string[]
  /** Several where the shot needs more than one camera. */
  readonly camera: readonly string[]
  readonly hold: 'tentative' | 'hard'
}
export interface PlacedTask {
  readonly id: string
  readonly start: IsoTime
  readonly end: IsoTime
  readonly people: readonly string[]
}
export interface Meal {
  readonly start: IsoTime
  readonly end: IsoTime
  readonly people: readonly string[]
}
/** One person's own day: called for their own first need, released after their last. */
export interface PersonalDay {
  readonly person: string
  readonly call: IsoTime
  readonly wrap: IsoTime
}
export interface Dropped {
  readonly id: string
  readonly why: string
  /** The one change that would save it, and its price. */
  readonly wouldSave: string
  /** "It costs one more person for 8 h."; absent where it costs nothing, or nobody knows. */
  readonly price?: string
  /** That change as edits of the shoot file; absent where it is none. */
  readonly edits?: readonly DocumentEdit[]
}
/** What to write at a JSON pointer ("-" appends); null takes out what stands there. */
export interface DocumentEdit {
  readonly pointer: string
  readonly value: unknown
}
export interface Conflict {
  readonly sentence: string
  readonly shots: readonly string[]
  readonly people: readonly string[]
  readonly rule: string
}
export interface Capture {
  /** "cook/moment" -> share of members in which it is captured (design 6.2), closed loop. */
  readonly each: Readonly<Record<string, number>>
  readonly joint: number
  /** The same when people go by the planned clock times alone. */
  readonly openLoop: { readonly each: Readonly<Record<string, number>>; readonly joint: number }
}
export interface Layout {
  /** Laid out anew at this time: what was past, or began within ten minutes, stands as it was. Absent: a first layout. */
  readonly asOf?: IsoTime
  /** Meat-on of the first cook; the zero of its moments. */
  readonly start: IsoTime
  /** Meat-on of every cook. */
  readonly meatOn: Readonly<Record<string, IsoTime>>
  readonly crewCall: IsoTime
  readonly wrap: IsoTime
  readonly shots: readonly PlacedShot[]
  readonly calls: readonly Call[]
  readonly tasks: readonly PlacedTask[]
  readonly meals: readonly Meal[]
  /** Everybody who is needed; absent in layouts of before. */
  readonly personal?: readonly PersonalDay[]
  readonly dropped: readonly Dropped[]
  readonly conflicts: readonly Conflict[]
  readonly capture: Capture
  /** By cook, the lid openings for shots that its forecast was told of: `at` in s after meat-on. Absent: none. */
  readonly lidOpenings?: Readonly<Record<string, readonly LidOpening[]>>
}
