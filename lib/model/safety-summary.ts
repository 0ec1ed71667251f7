/** What an ensemble says of safety: lethality, each printed minimum and who meets it, times to hurry through, holding and cooling. */
import type { Frac, Seconds } from '../units'
import { coldestUntilSlice } from './coldest-history'
import { type CoolingAdvice, coolingAdvice } from './cooling-rules'
import { cutOf } from './custom-cut'
import type { Animal, Cut } from './cuts'
import {
  dwellGrade,
  dwellSentence,
  type Grade,
  hotPart,
  type TableReach,
  tableReach,
  tableVerdict,
} from './dwell-table'
import type { Forecast, Spread } from './forecast'
import { type HotHold, hotHold } from './hot-hold'
import { propertyTable } from './materials'
import { FOOD_CODE_ROASTS, meetsMinimum, minimumFor, surfaceInside } from './minimums'
import { medianOf, spreadOf } from './quantiles'
import { type LedgerRow, ledgerOf, verdictOf } from './safety-ledger'
import type { SourceId } from './sources'
import { comeUpS, growthTimeS, LETHALITY_FROM_C } from './time-at-heat'

export interface SafetySummary {
  /** Least log reduction over all points by the first slice, inside the printed table's range. */
  readonly lethalityLog: Spread<number>
  /** Where that least lies, r/R: 0 at the coldest line. */
  readonly leastAt: Spread<Frac>
  readonly minimum: { readonly tempC: number; readonly restMin: number; readonly source: SourceId }
  /** Share of members whose coldest point keeps the minimum by the first slice. */
  readonly metShare: Frac
  /** The printed dwell table: how far it speaks for this animal, who keeps one of its rows, and what the likely cook comes to. */
  readonly dwellTable: {
    readonly reach: TableReach['reach']
    readonly metShare: Frac
    readonly grade: Grade
    readonly sentence: string
  }
  /** Time of the coldest point between 5 and 57 °C from meat-on to the first slice: shown, no authority we hold limits it. */
  readonly timeIn5to57: Spread<Seconds>
  /** Time of the coldest point from 10 to 54.4 °C on the way up, and who keeps the limit on it. */
  readonly comeUp: ComeUp
  /** Needled, bladed, injected, or boned and rolled. */
  readonly surfaceInside: boolean
  readonly ledger: readonly LedgerRow[]
  readonly hotHold: HotHold | null
  /** Null where the likely cook is never sliced. */
  readonly cooling: CoolingAdvice | null
  readonly notes: readonly string[]
}
export interface ComeUp {
  readonly time: Spread<Seconds>
  readonly within: Seconds
  readonly share: Frac
  readonly verdict: LedgerRow['verdict']
  readonly source: SourceId
}

/** [fsis-appendix-a-2021] */
const COME_UP_WITHIN_S = (6 * 3600) as Seconds

export function safetyOf(f: Forecast, authority = 'US'): SafetySummary {
  const cut = cutOf(f.cook.roast)
  if (cut === undefined) throw new RangeError(`no cut "${f.cook.roast.cut}" in the catalogue`)
  const { tempC, restMin, source } = minimumFor(cut, authority)
  const histories = Array.from({ length: f.members }, (_, m) => coldestUntilSlice(f, m))
  const hot = histories.map((h) => hotPart(h, LETHALITY_FROM_C))
  const { stepS } = f.trace
  const inside = surfaceInside(cut, f.cook.roast.pierced)
  const met = hot.filter((h) => meetsMinimum(h, stepS, { tempC, restMin })).length
  return {
    lethalityLog: spreadOf(f.lethalityLog),
    leastAt: spreadOf<Frac>(f.lethalityAt),
    minimum: { tempC, restMin, source },
    metShare: (met / f.members) as Frac,
    dwellTable: dwellTableOf(f, hot, histories, cut.animal),
    timeIn5to57: spreadOf<Seconds>(Float64Array.from(histories, (h) => growthTimeS(h, stepS))),
    comeUp: comeUpOf(Float64Array.from(histories, (h) => comeUpS(h, stepS))),
    surfaceInside: inside,
    ledger: ledgerOf(f, hot, cut.animal, inside),
    hotHold: holdOf(f, cut.animal, hot) ?? null,
    cooling: coolingOf(f, cut),
    notes: safetyNotes(cut.animal, authority, inside),
  }
}
/** [fda-food-code-2017] the animals whose roasts 3-401.11(B) names or means: whole-meat roasts, not birds, fish or game. */
const ROASTS: readonly Animal[] = ['beef', 'veal', 'lamb', 'pork']
/** Where a roast cooked by the code's own table may be held cooler. */
export function holdOf(f: Forecast, animal: Animal, hot = hotHistories(f)): HotHold | undefined {
  const keeps = (h: ArrayLike<number>) => tableVerdict(h, f.trace.stepS, FOOD_CODE_ROASTS).met
  return hotHold(
    f,
    hot.map((h) => ROASTS.includes(animal) && keeps(h)),
  )
}
const hotHistories = (f: Forecast) =>
  Array.from({ length: f.members }, (_, m) => hotPart(coldestUntilSlice(f, m), LETHALITY_FROM_C))

function dwellTableOf(
  f: Forecast,
  hot: readonly ArrayLike<number>[],
  whole: readonly Float32Array[],
  animal: Animal,
): SafetySummary['dwellTable'] {
  const verdicts = hot.map((h) => tableVerdict(h, f.trace.stepS))
  const share = (n: number) => (n / f.members) as Frac
  const metShare = share(verdicts.filter((v) => v.met).length)
  const firm = share(verdicts.filter((v) => v.met && !v.lowestOnly).length)
  const { reach, why } = tableReach(animal)
  const likely = tableVerdict(whole[likelyMember(f.atSlice.coreC)] ?? [], f.trace.stepS)
  return {
    reach,
    metShare,
    grade: dwellGrade(animal, metShare, firm),
    sentence: reach === 'none' ? why : dwellSentence(likely),
  }
}
/** The member whose coldest point is nearest the middle when sliced. */
function likelyMember(coreC: Float64Array): number {
  const middle = medianOf(coreC)
  const off = (m: number) => Math.abs((coreC[m] as number) - middle)
  return coreC.reduce((best, _, m) => (off(m) < off(best) ? m : best), 0)
}

function comeUpOf(times: Float64Array): ComeUp {
  const share = (times.filter((s) => s <= COME_UP_WITHIN_S).length / times.length) as Frac
  return {
    time: spreadOf<Seconds>(times),
    within: COME_UP_WITHIN_S,
    share,
    verdict: verdictOf(share, ['from-memory']),
    source: 'fsis-appendix-a-2021',
  }
}

/** The likely slice's temperatures as its stand-in has them when it is put to cool. */
export function coolingOf(f: Forecast, cut: Cut): CoolingAdvice | null {
  const { depthM, slicedC, thickness } = f.cutFace
  const coreC = medianOf(f.atSlice.coreC)
  if (!Number.isFinite(coreC)) return null
  const places = depthM.map((depth) => 1 - depth / (thickness / 2))
  const atPlaceC = (place: number) => between(places, slicedC, place) ?? coreC
  return coolingAdvice(cut, { radial: f.radial, table: propertyTable(cut.composition, cut.boneShare), atPlaceC })
}
/** Read off straight lines between places that fall from the skin (1) to the core (0). */
function between(places: readonly number[], valuesC: readonly number[], place: number): number | undefined {
  const i = places.findIndex((p) => p <= place)
  if (i <= 0) return i === 0 ? valuesC[0] : valuesC.at(-1)
  const [p, q] = [places[i - 1] as number, places[i] as number]
  const [a, b] = [valuesC[i - 1] as number, valuesC[i] as number]
  return b + ((a - b) * (place - q)) / (p - q)
}

/** What has to be said beside any figure of safety for this animal. */
function safetyNotes(animal: Animal, authority: string, inside: boolean): readonly string[] {
  const whose =
    authority === 'US'
      ? []
      : [`We hold no table for ${authority}; the minimum shown is the US authority's (USDA FSIS). Ask your local one.`]
  const within = inside
    ? ['Rolled or pierced, it has inside what lay on its surface: every part must get the heat.']
    : []
  return [
    ...whose,
    ...within,
    tableReach(animal).why,
    'Lethality counts only between 54.4 and 70 °C, the range of the table.',
  ]
}
