/**
 * What a finished cook teaches of its cooker, and what several together do. What counts is how long the core took to where it came,
 * against the plan's own forecast, and what the sensor in the cooker showed: with the cooker's own part of the level c, the day's m
 * and the pace p,
 *
 *   ln(time taken / likely) = s (c + m + drift) + p + the rest of the forecast's spread
 *   sensor - dial           = 0.6 (c + m) + its own place
 *
 * The shape of the probe's curve is left out: where the model is wrong it speaks of level and pace loudly and at random. Lessons
 * are independent but for what was known before any, which counts once.
 */
import { assimilate, type Observed } from './assimilate'
import type { CookPlan } from './cook'
import { COOKERS } from './cooker'
import { SHARED_WITH_SENSOR } from './cooker-fit'
import type { Belief, CookerMemory } from './cooker-memory'
import { MIDDLE } from './fitted'
import { type Prepared, prepared } from './forecast-cook'
import { cookAllBy, type KernelName } from './kernels'
import { BELONGS, PACE_NAMES, WARM_UP_EACH } from './memory-prior'
import { quantileOf, sortedCopy } from './quantiles'
import { insideMeat } from './reading-watch'
import { type Sample, samplesOf, whenReached } from './readings'
import { type Run, SAMPLE_S } from './simulate'
import { type Latents, memberOf } from './spread'

/** What one cook says of its cooker, given nothing of any other. Plain numbers, so that it can be kept as JSON. */
export interface CookerLesson {
  readonly cook: string
  /** Of the day, "2026-11-27". */
  readonly date: string
  /** At the meat against the dial, K; before the cook 0 ± `before`. */
  readonly level: Belief & { readonly before: number }
  /** Logarithm of how much longer a roast takes; before the cook 0 ± `before`. */
  readonly pace: Belief & { readonly before: number }
  /** Correlation of the two. */
  readonly tie: number
  /** From the match to steady, s; where both were marked. */
  readonly warmUpS?: number
}
export interface RememberOptions {
  readonly cook: string
  readonly date: string
  readonly seed?: number
  readonly kernel?: KernelName
}

const MEMBERS = 128
/** A core that has come less far than this, or in less time, tells nothing. */
const LEAST_RISE_K = 10
const LEAST_S = 600

/**
 * What the readings and marks of a finished cook teach of its cooker; nothing where no probe was read in the meat. The plan's own
 * memory is left out of it: what earlier cooks taught must not count twice.
 */
export function rememberCook(plan: CookPlan, observed: Observed, options: RememberOptions): CookerLesson | undefined {
  const { memory: _, ...cooker } = plan.cooker
  const plain: CookPlan = { ...plan, cooker }
  const { seed = 1, kernel = 'plain' } = options
  const of = prepared(plain, seed, cookAllBy(kernel))
  const came = cameTo(of, observed)
  if (came === undefined) return undefined
  const expected = expectedTo(plain, of, came.levelC, kernel)
  if (expected === undefined) return undefined
  const readings = observed.readings.filter(({ sensor, t }) => sensor === 'cooker' && t <= came.afterS)
  const marks = (observed.marks ?? []).filter(({ t }) => t <= came.afterS)
  const { cooker: seen } = assimilate(plain, { readings, marks, nowS: came.afterS }, { seed, kernel, of, members: 1 })
  const warmUpS = warmedUpIn(observed)
  return {
    cook: options.cook,
    date: options.date,
    ...learnt(COOKERS[cooker.kind].levelSdK, Math.log(came.afterS), expected, seen),
    ...(warmUpS === undefined ? {} : { warmUpS }),
  }
}

function warmedUpIn({ marks = [] }: Observed): number | undefined {
  const at = (moment: string) => marks.find((mark) => mark.moment === moment)?.t
  const [lit, steady] = [at('fire-lit'), at('cooker-steady')]
  return lit !== undefined && steady !== undefined && steady > lit ? steady - lit : undefined
}

/** The core to pull at, or the warmest that was read before it, and when the probe first came to it. */
function cameTo({ course }: Prepared, { readings, marks = [] }: Observed) {
  const pulledS = marks.find(({ moment }) => moment === 'pull')?.t ?? Infinity
  const inS = marks.find(({ moment }) => moment === 'probe-in')?.t ?? course.probeInS ?? 0
  const core = insideMeat(samplesOf(readings, 'core')).filter(({ timeS }) => timeS >= inS && timeS <= pulledS)
  const until = course.stages[course.pullStage]?.until
  const warmestC = core.reduce((most, { tempC }) => Math.max(most, tempC), Number.NEGATIVE_INFINITY)
  const levelC = until && 'core' in until ? Math.min(until.core, warmestC) : warmestC
  const afterS = reachedS(core, levelC)
  const enough = core.length > 1 && afterS >= LEAST_S && levelC >= (core[0] as Sample).tempC + LEAST_RISE_K
  return enough ? { levelC, afterS } : undefined
}
const reachedS = (samples: readonly Sample[], levelC: number) => whenReached(samples, levelC, 0) ?? Infinity

interface ExpectedTime {
  /** Of ln s: the middle, and the variance over members. */
  readonly ln: number
  readonly variance: number
  /** d ln s for a standard deviation of the level, and of each name of the pace. */
  readonly perLevel: number
  readonly perPace: readonly number[]
}
const SLOPE_STEP = 0.5

/** How long the plan's members take to a core as their probes read it. */
function expectedTo(plan: CookPlan, of: Prepared, levelC: number, kernel: KernelName): ExpectedTime | undefined {
  const input = { startC: plan.roast.start, thicknessSpread: of.geometry.thicknessSpread, habits: of.setting.habits }
  const still = { normal: () => 0, uniform: () => 0.5 }
  const beside = (['level', ...PACE_NAMES] as const).flatMap((name): Latents[] => [
    { ...MIDDLE, [name]: -SLOPE_STEP },
    { ...MIDDLE, [name]: SLOPE_STEP },
  ])
  const about = beside.map((z) => memberOf(z, input, still))
  const drawn = Array.from({ length: MEMBERS }, (_, m) => of.draw(m))
  const runs = cookAllBy(kernel)({ ...of.setting, endsAtSlice: true }, [...about, ...drawn])
  const ln = runs.map((run) => Math.log(runReachedS(run, levelC)))
  const slopes = beside.flatMap((_, i) =>
    i % 2 ? [((ln[i] as number) - (ln[i - 1] as number)) / (2 * SLOPE_STEP)] : [],
  )
  const members = sortedCopy(Float64Array.from(ln.slice(about.length).filter(Number.isFinite)))
  if (members.length < MEMBERS / 2 || !slopes.every(Number.isFinite)) return undefined
  const [low, middle, high] = [0.16, 0.5, 0.84].map((share) => quantileOf(members, share)) as [number, number, number]
  const [perLevel, ...perPace] = slopes as [number, ...number[]]
  return { ln: middle, variance: ((high - low) / 2) ** 2, perLevel, perPace }
}
function runReachedS({ trace: { probeC } }: Run, levelC: number): number {
  for (let i = 1; i < probeC.length; i++) {
    const [before, now] = [probeC[i - 1] as number, probeC[i] as number]
    if (now >= levelC) return SAMPLE_S * (i - (now - levelC) / Math.max(1e-9, now - before))
  }
  return Infinity
}

/** Of the forecast's variance, the least that is the day's. [estimate] */
const LEAST_REST = 0.05 ** 2
/** Three things and what is known of them: the cooker's level, the day's, the pace. */
interface Known {
  readonly mean: readonly number[]
  readonly cov: readonly (readonly number[])[]
}
/** One linear reading of them. */
function told({ mean, cov }: Known, by: readonly number[], value: number, variance: number): Known {
  const toward = cov.map((row) => row.reduce((sum, x, j) => sum + x * (by[j] as number), 0))
  const spread = by.reduce((sum, b, i) => sum + b * (toward[i] as number), variance)
  const off = value - by.reduce((sum, b, i) => sum + b * (mean[i] as number), 0)
  return {
    mean: mean.map((x, i) => x + ((toward[i] as number) * off) / spread),
    cov: cov.map((row, i) => row.map((x, j) => x - ((toward[i] as number) * (toward[j] as number)) / spread)),
  }
}

type Seen = ReturnType<typeof assimilate>['cooker']
function learnt(
  levelSdK: number,
  lnTaken: number,
  expected: ExpectedTime,
  { seen, biasK, biasVarianceK2, pastK }: Seen,
) {
  const paceVariance = expected.perPace.reduce(
    (sum, slope, i) => sum + slope ** 2 * BELONGS[PACE_NAMES[i] as (typeof PACE_NAMES)[number]],
    0,
  )
  const varianceK2 = levelSdK ** 2
  const perK = levelSdK > 0 ? expected.perLevel / levelSdK : 0
  const own = [BELONGS.level * varianceK2, (1 - BELONGS.level) * varianceK2, paceVariance]
  const before: Known = { mean: [0, 0, 0], cov: own.map((x, i) => own.map((_, j) => (i === j ? x : 0))) }
  const rest = Math.max(LEAST_REST, expected.variance - expected.perLevel ** 2 - paceVariance)
  const driftK = seen ? pastK.reduce((sum, x) => sum + x, 0) / (pastK.length || 1) : 0
  let known = told(before, [perK, perK, 1], lnTaken - expected.ln - perK * driftK, rest)
  const narrowed = 1 - biasVarianceK2 / (varianceK2 || 1)
  if (seen && narrowed > 0) {
    // the bias as the sensor alone has it, without what was known of it before
    const noise = biasVarianceK2 / narrowed + (1 - SHARED_WITH_SENSOR ** 2) * varianceK2
    known = told(known, [SHARED_WITH_SENSOR, SHARED_WITH_SENSOR, 0], biasK / narrowed, noise)
  }
  const sd = (i: number) => Math.sqrt(Math.max(0, known.cov[i]?.[i] ?? 0))
  const belief = (i: number) => ({ mean: known.mean[i] as number, sd: sd(i), before: Math.sqrt(own[i] as number) })
  const tie = sd(0) * sd(2) > 0 ? (known.cov[0]?.[2] as number) / (sd(0) * sd(2)) : 0
  return { level: belief(0), pace: belief(2), tie }
}

/** Symmetric, two by two: level and level, level and pace, pace and pace. */
type Two = readonly [number, number, number]
const inverse = ([a, b, c]: Two): Two => {
  const d = a * c - b * b
  return [c / d, -b / d, a / d]
}
const plus = (x: Two, y: Two, factor = 1): Two => [x[0] + factor * y[0], x[1] + factor * y[1], x[2] + factor * y[2]]
const on = ([a, b, c]: Two, [x, y]: readonly [number, number]) => [a * x + b * y, b * x + c * y] as const

/** What several cooks teach together; nothing of none. A cook that stands twice in the list counts once, also under a copy of its shoot. */
export function combineLessons(lessons: readonly CookerLesson[]): CookerMemory | undefined {
  const named = [...new Map(lessons.map((lesson) => [`${lesson.date} ${lesson.cook}`, lesson])).values()]
  // To the last digit the same is the same day.
  const each = [...new Map(named.map((one) => [`${one.date} ${one.level.mean} ${one.pace.mean}`, one])).values()]
  if (each.length === 0) return undefined
  const mean = (of: (lesson: CookerLesson) => number) => each.reduce((sum, l) => sum + of(l), 0) / each.length
  const before: Two = inverse([
    mean(({ level }) => wide(level.before) ** 2),
    0,
    mean(({ pace }) => wide(pace.before) ** 2),
  ])
  let known = before
  let toward: readonly [number, number] = [0, 0]
  for (const { level, pace, tie } of each) {
    const left = inverse([wide(level.sd) ** 2, tie * level.sd * pace.sd, wide(pace.sd) ** 2])
    known = plus(known, plus(left, inverse([wide(level.before) ** 2, 0, wide(pace.before) ** 2]), -1))
    const by = on(left, [level.mean, pace.mean])
    toward = [toward[0] + by[0], toward[1] + by[1]]
  }
  const left = inverse(known)
  const [levelK, pace] = on(left, toward)
  const [levelSdK, paceSd] = [Math.sqrt(left[0]), Math.sqrt(left[2])]
  const warmUp = combinedWarmUp(each)
  return {
    cooks: each.length,
    level: { mean: levelK, sd: levelSdK },
    pace: { mean: pace, sd: paceSd },
    tie: left[1] / (levelSdK * paceSd),
    ...(warmUp ? { warmUp } : {}),
  }
}
/** A quantity that a cook cannot tell of is known to almost nothing either way. */
const wide = (sd: number) => Math.max(1e-6, sd)

function combinedWarmUp(each: readonly CookerLesson[]): Belief | undefined {
  const known = each.flatMap(({ warmUpS }) => (warmUpS === undefined ? [] : [Math.log(warmUpS)]))
  if (known.length === 0) return undefined
  const mean = known.reduce((sum, x) => sum + x, 0) / known.length
  return { mean: Math.exp(mean), sd: (Math.exp(mean) * WARM_UP_EACH) / Math.sqrt(known.length) }
}
