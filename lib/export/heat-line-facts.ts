import type { MomentId } from '../model/moment-ids'
import type { Celsius, Instant, UnitSystem } from '../units'
import type { ZoneClock } from './heat-line-clock'

export interface MomentFact {
  readonly id: MomentId
  readonly name: string
  readonly early: Instant | null
  readonly likely: Instant | null
  readonly late: Instant | null
  readonly reached: number
  /** It happened, and then. */
  readonly marked?: true
  /** When this morning's forecast had it, on a day that runs. */
  readonly morning?: Instant | null
}
export interface CurvePoint {
  readonly at: Instant
  readonly low: number
  readonly likely: number
  readonly high: number
}
export interface Reading {
  readonly at: Instant
  /** °C. */
  readonly level: number
}
export type LightPart = {
  readonly light: 'golden' | 'twilight' | 'dark'
  readonly name: string
  readonly start: Instant
  readonly end: Instant
}
/** A roast as one line: on the heat, at rest, sliced. */
export interface RoastFact {
  readonly title: string
  readonly moments: readonly MomentFact[]
  readonly on: Instant
  readonly off: Instant
  readonly end: Instant
}

export interface ShotFact {
  readonly id: string
  readonly number: string
  readonly title: string
  /** Not at a moment: no pole names it. */
  readonly free: boolean
  readonly cameras: readonly string[]
  readonly people: readonly string[]
  readonly place: string | null
  readonly setup: Instant
  readonly start: Instant
  readonly end: Instant
  /** Called on the day, not clocked. */
  readonly live: boolean
  readonly hard: boolean
}
export interface MealFact {
  readonly start: Instant
  readonly end: Instant
  readonly people: readonly string[]
}
export interface CrewFacts {
  readonly cameras: readonly { readonly id: string; readonly name: string; readonly operator: string | null }[]
  readonly people: readonly { readonly id: string; readonly name: string; readonly operator: boolean }[]
  readonly shots: readonly ShotFact[]
  /** Taken together once. */
  readonly meals: readonly MealFact[]
  readonly sides: readonly { readonly name: string; readonly on: Instant; readonly off: Instant }[]
  readonly tentative: { readonly from: Instant; readonly to: Instant } | null
  /** The shots that a moment of the first roast calls. */
  readonly called: readonly { readonly moment: MomentId; readonly shot: string }[]
}

/** What a running day adds: what was read, and what this morning's forecast was. */
export interface DayFacts {
  readonly read: readonly Reading[]
  readonly cookerRead: readonly Reading[]
  /** What the probe was to read. */
  readonly morning: readonly Reading[]
}

/** What the heat line is drawn from, whatever its width: plain values that travel to the page. */
export interface HeatFacts {
  /** One sentence that says what the picture says; read aloud in its stead. */
  readonly title: string
  readonly units: UnitSystem
  readonly clock: ZoneClock
  /** From 20 min before the first call to 25 min after wrap; dark is let in where it is near. */
  readonly from: Instant
  readonly to: Instant
  /** The same of the moments alone, where no crew is shown. */
  readonly heat: { readonly from: Instant; readonly to: Instant }
  /** Those that likely come, by time. */
  readonly moments: readonly MomentFact[]
  /** Those that do not come in at least half of the cooks. */
  readonly never: readonly MomentFact[]
  /** What the probe reads, °C, from meat-on to just after the slice. */
  readonly meat: readonly CurvePoint[]
  /** What it would read from there to the carryover peak, were the roast left whole. */
  readonly whole: readonly CurvePoint[]
  readonly cooker: readonly CurvePoint[]
  readonly targets: readonly { readonly at: Celsius; readonly words: string }[]
  /** The food-safety authority's minimum, drawn dotted right across. */
  readonly minimum: { readonly at: Celsius; readonly words: string } | null
  readonly roastAt: Celsius
  readonly searAt: Celsius | null
  readonly sliced: { readonly low: number; readonly likely: number; readonly high: number }
  /** Beyond the span, so that a picture may need a little more. */
  readonly sun: readonly { readonly at: Instant; readonly deg: number }[]
  readonly light: readonly LightPart[]
  /** The first is drawn in full, the others as one line each. */
  readonly roasts: readonly RoastFact[]
  readonly lids: readonly { readonly at: Instant; readonly openS: number }[]
  readonly crew: CrewFacts | null
  readonly day?: DayFacts
}

/** How a picture of them is wanted. */
export interface HeatView {
  readonly width: number
  /** Time runs down, for a phone. */
  readonly standing: boolean
  readonly lanes: boolean
  /** Low panels: for a sheet that must hold it whole, or for the call sheet, where a table with the windows stands beside. */
  readonly low?: 'paper' | 'compact'
  /** Written into the empty upper left, or above the picture where flags stand there. */
  readonly say?: { readonly main: string; readonly why: readonly string[] }
  /** A part of the day, drawn larger. */
  readonly span?: { readonly from: Instant; readonly to: Instant }
  /** On the day itself. */
  readonly now?: Instant
}
