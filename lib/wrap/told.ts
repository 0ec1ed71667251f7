import type { MomentId } from '../model/moment-ids'
import type { Instant, Seconds } from '../units'

/** What the wrap is told of the day's plan, forecasts, calls and alerts, as plain values. */

export interface Span {
  readonly early: Instant | null
  readonly likely: Instant | null
  readonly late: Instant | null
}
/** By cook and moment, what the plan said in the morning. */
export type Morning = Readonly<Record<string, Readonly<Partial<Record<MomentId, Span>>>>>

export interface ToldMoment {
  readonly cook: string
  readonly moment: MomentId
  readonly likely: Instant
  readonly sd: Seconds
}
/** A forecast of the day: when it was told, and what it said. */
export interface ToldForecast {
  readonly at: Instant
  readonly forecast: { readonly expected: readonly ToldMoment[] }
}
export interface ToldCall {
  readonly id: string
  readonly shot: string
  readonly title: string
  readonly cook: string
  readonly moment: MomentId
  readonly people: readonly string[]
  /** Standby by the plan. */
  readonly standby: Instant | null
  /** When people were called, why then, and what became of it. */
  readonly called: Instant | null
  readonly why: string | null
  readonly state: string
}
export interface ToldAlert {
  readonly owner: string
  readonly asked: readonly string[]
  readonly state: string
}
export interface PlannedMeal {
  readonly start: Instant
  readonly people: readonly string[]
}

/** The last forecast that was told by then. */
export const boardBy = (told: readonly ToldForecast[], by: Instant): ToldForecast | null =>
  told.reduce<ToldForecast | null>((last, one) => (one.at <= by && one.at >= (last?.at ?? 0) ? one : last), null)

/** One-sided 95 %, as the forecasts of the day give their spread. */
const Z = 1.645
export const spanOf = ({ likely, sd }: ToldMoment): Span => {
  const early = (likely - Z * sd * 1000) as Instant
  return { early, likely, late: (2 * likely - early) as Instant }
}
