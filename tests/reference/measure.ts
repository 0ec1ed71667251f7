/** Model against fixture, as named error samples: the tests gate them and the report prints them. */
import { readFileSync } from 'node:fs'
import type { CookPlan, Stage } from '../../lib/model/cook'
import { COOKERS } from '../../lib/model/cooker'
import { type Cut, cutById } from '../../lib/model/cuts'
import { settingOf } from '../../lib/model/setting'
import { geometryOf, type Measured, typicalThicknessM } from '../../lib/model/shape'
import { type Run, type Setting, simulate } from '../../lib/model/simulate'
import { centralMember } from '../../lib/model/spread'
import { celsius, frac, kilograms, metres, metresPerSecond, minutes } from '../../lib/units'

export const published = <T>(name: string): T =>
  JSON.parse(readFileSync(new URL(`../fixtures/published/${name}.json`, import.meta.url), 'utf8'))

/** The kitchen of the old tables. */
const KITCHEN = { air: celsius(22), wind: metresPerSecond(0), humidity: frac(0.5), altitude: metres(0) }

export interface OvenCook {
  readonly cut: Cut
  readonly massKg: number
  readonly startC: number
  readonly ovenC: number
  readonly endC: number
  readonly measured?: Measured
  /** Minutes of rest after removal; none for the times. */
  readonly restMin?: number
}
/** A steady still oven, removal at the endpoint. */
export function ovenSetting({ cut, massKg, startC, ovenC, endC, measured, restMin }: OvenCook): Setting {
  const stages: Stage[] = [
    { do: 'preheat', at: celsius(ovenC) },
    { do: 'roast', at: celsius(ovenC), until: { core: celsius(endC) } },
    { do: 'rest', until: { after: minutes(restMin ?? 0) } },
  ]
  const plan: CookPlan = {
    id: 'row',
    roast: { cut: cut.id, mass: kilograms(massKg), start: celsius(startC), ...measured },
    cooker: { kind: 'oven' },
    stages,
    surroundings: KITCHEN,
    lidOpenings: [],
  }
  return settingOf(plan, cut, geometryOf(cut, plan.roast.mass, measured))
}
/** The likely member: every prior at its middle, the probe at the coldest point. */
export const ovenRun = (cook: OvenCook): Run => simulate(ovenSetting(cook), centralMember(cook.startC, COOKERS.oven))

export interface ChartRow {
  readonly n: number
  readonly file: string
  readonly cut: string
  readonly part: string
  readonly mass_kg: number
  readonly oven_C: number
  readonly start_C: number
  readonly endpoint_C: number
  readonly minutes: readonly [number, number]
  readonly weight: number
  readonly role: 'score' | 'calibration' | 'doubtful' | 'contradicted'
}
const ROWS = published<{ rows: ChartRow[] }>('roasting-times').rows
const COUNTED = new Set(['score', 'calibration'])
/** Rows that are scored or were fitted to, and those that are only printed. */
export const CHART = ROWS.filter((row) => COUNTED.has(row.role))
export const ASIDE = ROWS.filter((row) => !COUNTED.has(row.role))

/** How many of the printed part make the whole whose section it keeps: a half of two, one rib of a rack of three. */
const WHOLE_PER_PART: Readonly<Record<string, number>> = { half: 2, 'cured ham, half': 2, 'one rib': 3 }
/** Sizes that the printed part has instead of the catalogue's: the section of the whole, and what length the mass leaves. */
export function partSizes(cut: Cut, row: ChartRow): Measured | undefined {
  const ofWhole = WHOLE_PER_PART[row.part]
  if (ofWhole === undefined) return undefined
  const thickness = typicalThicknessM(cut, ofWhole * row.mass_kg)
  return { thickness: metres(thickness), width: metres(thickness * cut.widthPerThickness) }
}

export interface ChartSample {
  readonly row: ChartRow
  readonly label: string
  /** Model minutes; +Infinity where it never gets there, which counts as a failure. */
  readonly modelMin: number
  readonly ratio: number
  readonly met: boolean
}
const MET_WITHIN = 0.15
export function chartSample(row: ChartRow): ChartSample {
  const cut = cutById(row.cut)
  if (!cut) return sampleOf(row, Number.POSITIVE_INFINITY)
  const measured = partSizes(cut, row)
  const cook = { cut, massKg: row.mass_kg, startC: row.start_C, ovenC: row.oven_C, endC: row.endpoint_C }
  return sampleOf(row, ovenRun(measured ? { ...cook, measured } : cook).moments.pull / 60)
}
export function sampleOf(row: ChartRow, modelMin: number): ChartSample {
  const label = `n=${row.n} ${row.cut} (${row.part}) ${row.mass_kg} kg, ${row.oven_C} to ${row.endpoint_C} °C`
  const [low, high] = row.minutes
  const ratio = modelMin / ((low + high) / 2)
  const met = (modelMin >= low && modelMin <= high) || Math.abs(ratio - 1) <= MET_WITHIN
  return { row, label, modelMin, ratio, met }
}

export interface Score {
  readonly n: number
  readonly weight: number
  readonly share: number
  readonly median: number
  readonly logSd: number
}
/** Weighted share met, median of model/table, and standard deviation of its logarithm about the mean. */
export function scoreOf(samples: readonly ChartSample[]): Score {
  const weight = samples.reduce((s, x) => s + x.row.weight, 0)
  const share = samples.reduce((s, x) => s + (x.met ? x.row.weight : 0), 0) / weight
  const median = weightedMedian(samples, weight)
  const meanLog = samples.reduce((s, x) => s + x.row.weight * Math.log(x.ratio), 0) / weight
  const variance = samples.reduce((s, x) => s + x.row.weight * (Math.log(x.ratio) - meanLog) ** 2, 0) / weight
  return { n: samples.length, weight, share, median, logSd: Math.sqrt(variance) }
}

function weightedMedian(samples: readonly ChartSample[], weight: number) {
  let passed = 0
  for (const { ratio, row } of [...samples].sort((a, b) => a.ratio - b.ratio)) {
    passed += row.weight
    if (passed >= weight / 2) return ratio
  }
  return Number.NaN
}

export interface Sample {
  readonly label: string
  /** Model over table, less 1, or the difference where the gate's unit says so. */
  readonly error: number
}
export const meanOf = (samples: readonly Sample[]) =>
  samples.reduce((sum, s) => sum + Math.abs(s.error), 0) / samples.length
export const worstOf = (samples: readonly Sample[]) => samples.reduce((w, s) => Math.max(w, Math.abs(s.error)), 0)
