/** Every printed rule that speaks of a cook, side by side: what it asks, the share of members that keep it, and what may be said. */
import type { Frac } from '../units'
import type { Animal } from './cuts'
import {
  ALWAYS,
  type Dwell,
  dwellGrade,
  type Grade,
  LOG_6_5,
  LOG_7,
  type TableVerdict,
  tableVerdict,
} from './dwell-table'
import type { Forecast } from './forecast'
import { type HeatRule, heatRules, type RuleId, type Whose } from './minimums'
import { foodCodeOven, type OvenCondition } from './oven-minimums'
import type { SourceId } from './sources'

export type LedgerVerdict = 'kept' | 'kept-with-care' | 'kept-in-part' | 'not-kept'
/** Why a rule that is kept is not simply so. */
export type Care = 'other-animal' | 'lowest-row' | 'oven' | 'from-memory'
export interface LedgerRow {
  readonly id: RuleId | 'dwell-table' | 'dwell-table-7'
  readonly whose: Whose
  readonly source: SourceId
  /** Any one of these is enough. */
  readonly asks: readonly Dwell[]
  /** Of the members that keep it by the first slice. */
  readonly share: Frac
  readonly verdict: LedgerVerdict
  readonly care: readonly Care[]
  /** The oven that goes with the rule, where one does. */
  readonly oven: OvenCondition | undefined
}

/** Each member's coldest point from where it first comes to the lowest row of any rule; all before that counts for nothing. */
export type HotHistories = readonly ArrayLike<number>[]
const shareOf = (verdicts: readonly TableVerdict[], keeps: (v: TableVerdict) => boolean) =>
  (verdicts.filter(keeps).length / Math.max(1, verdicts.length)) as Frac
const aboveLowest = (v: TableVerdict) => v.met && !v.lowestOnly

export function verdictOf(share: number, care: readonly Care[]): LedgerVerdict {
  if (share < 0.5) return 'not-kept'
  if (share < ALWAYS || care.includes('oven')) return 'kept-in-part'
  return care.length > 0 ? 'kept-with-care' : 'kept'
}
const verdictOfGrade: Readonly<Record<Exclude<Grade, 'no-word'>, LedgerVerdict>> = {
  'borne-out': 'kept',
  'borne-out-with-care': 'kept-with-care',
  'in-part': 'kept-in-part',
  'not-met': 'not-kept',
}

function heatRow(rule: HeatRule, f: Forecast, hot: HotHistories): LedgerRow {
  const verdicts = hot.map((h) => tableVerdict(h, f.trace.stepS, rule.asks))
  const share = shareOf(verdicts, (v) => v.met)
  const oven = rule.id === 'food-code-roast' ? foodCodeOven(f.cook) : undefined
  const weakRow = share >= ALWAYS && shareOf(verdicts, aboveLowest) < ALWAYS
  const care: Care[] = [
    ...(weakRow ? (['lowest-row'] as const) : []),
    ...(oven && !oven.kept ? (['oven'] as const) : []),
  ]
  return { ...rule, share, verdict: verdictOf(share, care), care, oven }
}

function tableRow(id: 'dwell-table' | 'dwell-table-7', f: Forecast, hot: HotHistories, animal: Animal): LedgerRow[] {
  const asks = id === 'dwell-table' ? LOG_6_5 : LOG_7
  const verdicts = hot.map((h) => tableVerdict(h, f.trace.stepS, asks))
  const share = shareOf(verdicts, (v) => v.met)
  const firm = shareOf(verdicts, aboveLowest)
  const grade = dwellGrade(animal, share, firm)
  if (grade === 'no-word') return []
  const care: Care[] = [
    ...(animal === 'beef' ? [] : (['other-animal'] as const)),
    ...(share >= ALWAYS && firm < ALWAYS ? (['lowest-row'] as const) : []),
  ]
  const verdict = verdictOfGrade[grade]
  return [{ id, whose: 'USDA FSIS', source: 'fsis-appendix-a-1999', asks, share, verdict, care, oven: undefined }]
}

/** The rules on heat, the plan's authority's own first. */
export const ledgerOf = (f: Forecast, hot: HotHistories, animal: Animal, inside: boolean): readonly LedgerRow[] => [
  ...heatRules(animal, inside, f.cook.roast.pierced).map((rule) => heatRow(rule, f, hot)),
  ...tableRow('dwell-table', f, hot, animal),
  ...tableRow('dwell-table-7', f, hot, animal),
]
