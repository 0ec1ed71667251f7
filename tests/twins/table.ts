/** All twins of both families in one table, beside the bounds that the forecast is held to. */
import { type Line, linesOf, preFireError, type Row, scoreTwin } from './score'
import { dryingTwin } from './truth-drying'
import { solidTwin } from './truth-solid'
import { type Family, type Twin, type TwinKind, twinChance } from './twin'

/** Mean absolute error of the likely pull, min, by horizon; of what the probe reads at slicing, K. */
export const BOUNDS = {
  A: { maeMin: { 60: 5, 45: 3.5, 30: 2, 15: 1, 5: 0.6 }, sliceC: 1 },
  B: { maeMin: { 60: 7, 45: 5, 30: 3.5, 15: 1.5, 5: 0.8 }, sliceC: 2 },
} as const
export const COVERED = [0.72, 0.88] as const
/** Against the best of the baselines: better by this from 45 min on, elsewhere no worse than this or by 0.1 min. */
const BETTER_FROM_MIN = 45
const BETTER = 0.85
const NO_WORSE = 1.1
const NO_WORSE_MIN = 0.1

export interface FamilyTable {
  readonly family: Family
  readonly twins: number
  readonly seen: readonly Line[]
  /** Horizons at which the probe was not in yet. */
  readonly unseen: readonly Line[]
  readonly preFirePercent: number
  readonly misses: readonly string[]
}

/** A made-up cook that never gets there, or is over at once, is made up anew. */
const TRIES = 40
export function twinOf(family: Family, kind: TwinKind, n: number, seed: number): Twin {
  const make = family === 'A' ? solidTwin : dryingTwin
  for (let again = 0; again < TRIES; again++) {
    const twin = make(kind, n + 1000 * again, seed, twinChance(seed, family, kind, n + 10_000 * again))
    if (twin) return twin
  }
  throw new Error(`no twin ${family} ${kind} ${n} of seed ${seed} comes to its pull`)
}

/** What a forecaster did on one twin; the error before the fire in percent. */
export interface Scored {
  readonly family: Family
  readonly rows: readonly Row[]
  readonly preFirePercent: number
}
export function scored(family: Family, kind: TwinKind, n: number, seed: number): Scored {
  const twin = twinOf(family, kind, n, seed)
  const preFirePercent = (100 * 60 * Math.abs(preFireError(twin, seed))) / twin.pullS
  return { family, rows: scoreTwin(twin, seed), preFirePercent }
}

export const tableOf = (family: Family, seed: number, each: number, kinds: readonly TwinKind[]) =>
  tableFrom(
    family,
    kinds.flatMap((kind) => Array.from({ length: each }, (_, n) => scored(family, kind, n, seed))),
  )

export function tableFrom(family: Family, twins: readonly Scored[]): FamilyTable {
  const own = twins.filter((twin) => twin.family === family)
  const rows = own.flatMap((twin) => twin.rows)
  const seen = linesOf(rows, true)
  return {
    family,
    twins: own.length,
    seen,
    unseen: linesOf(rows, false),
    preFirePercent: own.reduce((sum, twin) => sum + twin.preFirePercent, 0) / own.length,
    misses: seen.flatMap((line) => missesOf(family, line)),
  }
}

/** Every bound that a line does not keep, with its figure. */
export function missesOf(family: Family, line: Line): string[] {
  const at = `${family} at ${line.horizonMin} min`
  const { maeMin, sliceC } = BOUNDS[family]
  const most = maeMin[line.horizonMin as keyof typeof maeMin]
  const base = line.bestBaseline
  const far = line.horizonMin >= BETTER_FROM_MIN
  const allowed = far ? BETTER * base : Math.max(NO_WORSE * base, base + NO_WORSE_MIN)
  const misses: string[] = []
  if (line.maeMin > most) misses.push(`${at}: error ${line.maeMin.toFixed(2)} min, at most ${most}`)
  if (line.maeMin > allowed)
    misses.push(`${at}: error ${line.maeMin.toFixed(2)} min, the best baseline ${base.toFixed(2)}`)
  if (line.coverage < COVERED[0] || line.coverage > COVERED[1])
    misses.push(`${at}: 80 % intervals cover ${(100 * line.coverage).toFixed(0)} %`)
  if (line.sliceProbeMaeC > sliceC)
    misses.push(`${at}: probe at slicing off by ${line.sliceProbeMaeC.toFixed(2)} °C, at most ${sliceC}`)
  return misses
}

/** As lines of text, all families in one table. */
export function printed(tables: readonly FamilyTable[]): string {
  const two = (x: number) => x.toFixed(2)
  const row = (family: Family, line: Line, mark = '') => [
    family,
    `${line.horizonMin}${mark}`,
    line.count,
    two(line.maeMin),
    two(line.bestBaseline),
    `${Math.round(100 * line.coverage)} %`,
    two(line.widthMin),
    two(line.sliceProbeMaeC),
    `${two(line.sliceMaeC)} (${Math.round(100 * line.sliceCoverage)} %)`,
  ]
  const rows = [
    HEAD,
    HEAD.map(() => '---'),
    ...tables.flatMap(({ family, seen }) => seen.map((line) => row(family, line))),
    ...tables.flatMap(({ family, unseen }) => unseen.map((line) => row(family, line, ' (no probe yet)'))),
  ]
  return [
    ...rows.map((cells) => `| ${cells.join(' | ')} |`),
    '',
    ...tables.map(
      ({ family, twins, preFirePercent }) =>
        `Family ${family}: ${twins} twins; before the fire off by ${preFirePercent.toFixed(1)} % in the mean.`,
    ),
    ...tables.flatMap(({ misses }) => misses.map((miss) => `misses: ${miss}`)),
  ].join('\n')
}
const HEAD = [
  'Family',
  'Ahead, min',
  'Twins',
  'Off by, min',
  'Best baseline, min',
  '80 % hold',
  'Width, min',
  'Probe at slicing, °C',
  'Coldest point at slicing, °C (80 % hold)',
]
