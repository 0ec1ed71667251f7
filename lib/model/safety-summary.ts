/** What an ensemble says of safety: lethality, the authority's minimum and who meets it, time in the range to hurry through. */
import type { Frac, Seconds } from '../units'
import { knownCutOf } from './custom-cut'
import type { Forecast, Spread } from './forecast'
import { spreadOf } from './quantiles'
import { growthTimeS, meetsMinimum, minimumFor, safetyNotes, type TableReach, tableReach, tableVerdict } from './safety'
import type { SourceId } from './sources'

export interface SafetySummary {
  /** Least log reduction over all points by the first slice, inside the printed table's range. */
  readonly lethalityLog: Spread<number>
  readonly minimum: { readonly tempC: number; readonly restMin: number; readonly source: SourceId }
  /** Share of members whose coldest point keeps the minimum by the first slice. */
  readonly metShare: Frac
  /** The printed dwell table: how far it speaks for this animal, and the share of members that keep one of its rows. */
  readonly dwellTable: { readonly reach: TableReach['reach']; readonly metShare: Frac }
  /** Time of the coldest point between 5 and 57 °C from meat-on to the first slice. */
  readonly timeIn5to57: Spread<Seconds>
  readonly notes: readonly string[]
}

/** The coldest point of a member from meat-on to its first slice (or to the end of the trace where it never gets there). */
function coldestUntilSlice({ trace, moments }: Forecast, m: number): Float32Array {
  const slice = moments['first-slice']?.[m] ?? Number.POSITIVE_INFINITY
  const from = Math.round(-trace.startS / trace.stepS)
  const to = Math.min(trace.count, Math.floor((slice - trace.startS) / trace.stepS) + 1)
  return trace.coreC.subarray(m * trace.count + from, m * trace.count + Math.max(from + 1, to))
}

export function safetyOf(forecast: Forecast, authority = 'US'): SafetySummary {
  const cut = knownCutOf(forecast.cook.roast)
  const { tempC, restMin, source } = minimumFor(cut, authority)
  const histories = Array.from({ length: forecast.members }, (_, m) => coldestUntilSlice(forecast, m))
  const { stepS } = forecast.trace
  const shareOf = (keeps: (h: Float32Array) => boolean) => (histories.filter(keeps).length / forecast.members) as Frac
  return {
    lethalityLog: spreadOf(forecast.lethalityLog),
    minimum: { tempC, restMin, source },
    metShare: shareOf((h) => meetsMinimum(h, stepS, { tempC, restMin })),
    dwellTable: { reach: tableReach(cut.animal).reach, metShare: shareOf((h) => tableVerdict(h, stepS).met) },
    timeIn5to57: spreadOf<Seconds>(Float64Array.from(histories, (h) => growthTimeS(h, stepS))),
    notes: safetyNotes(cut.animal, authority),
  }
}
