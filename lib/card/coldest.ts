import { coldestUntilSlice } from '../model/coldest-history'
import { type TableVerdict, tableVerdict } from '../model/dwell-table'
import type { Forecast } from '../model/forecast'
import { type Minimum, meetsMinimum } from '../model/minimums'
import { spreadOf } from '../model/quantiles'
import type { Figure } from './claim'

const everyMember = (f: Forecast) => Array.from({ length: f.members }, (_, m) => coldestUntilSlice(f, m))

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
