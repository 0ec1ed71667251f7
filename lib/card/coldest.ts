import type { Forecast } from '../model/forecast'
import { spreadOf } from '../model/quantiles'
import { type Minimum, meetsMinimum, type TableVerdict, tableVerdict } from '../model/safety'
import type { Figure } from './claim'

/** The coldest point's history of one member up to its first slice, °C. */
function untilSlice(f: Forecast, member: number): Float32Array {
  const { startS, stepS, count, coreC } = f.trace
  const slice = f.moments['first-slice']?.[member] ?? Number.POSITIVE_INFINITY
  const length = Math.max(1, Math.min(count, Math.floor((slice - startS) / stepS) + 1))
  return coreC.subarray(member * count, member * count + length)
}
const everyMember = (f: Forecast) => Array.from({ length: f.members }, (_, m) => untilSlice(f, m))

/** The highest the coldest point has been by the first slice, °C. */
export const coldestPeak = (f: Forecast): Figure =>
  spreadOf<number>(
    Float64Array.from(everyMember(f), (history, m) =>
      history.reduce((a, b) => Math.max(a, b), f.atSlice.coreC[m] ?? 0),
    ),
  )

/** Share of the members whose coldest point keeps the authority's minimum before the first slice. */
export const shareMeeting = (f: Forecast, minimum: Minimum): number =>
  everyMember(f).filter((history) => meetsMinimum(history, f.trace.stepS, minimum)).length / f.members

/** What the printed dwell table says of each member. */
export const tableVerdicts = (f: Forecast): readonly TableVerdict[] =>
  everyMember(f).map((history) => tableVerdict(history, f.trace.stepS))
