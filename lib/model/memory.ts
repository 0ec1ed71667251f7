/**
 * What a finished cook teaches of its cooker, and what several together do. A draw z of the model is the cooker's own part c and the
 * day's, of shares r and 1 - r of its variance; the fit of the day knows z with mean u and covariance C, so that
 *
 *   c | day: mean R u, covariance R C R + R (I - R)         R: shares on the diagonal
 *
 * and level and pace are sums B c of it. Lessons are independent but for what was known before any, which counts once.
 */
import { type AssimilateOptions, assimilate, type Fit, type Observed } from './assimilate'
import type { CookPlan } from './cook'
import { COOKERS } from './cooker'
import type { Belief, CookerMemory } from './cooker-memory'
import { prepared } from './forecast-cook'
import { cookAllBy, type KernelName } from './kernels'
import { BELONGS, PACE_NAMES, WARM_UP_EACH } from './memory-prior'
import { SAMPLE_S } from './simulate'
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

/**
 * What the readings and marks of a finished cook teach of its cooker; nothing where no probe was read in the meat. The plan's own
 * memory is left out of it: what earlier cooks taught must not count twice.
 */
export function rememberCook(plan: CookPlan, observed: Observed, options: RememberOptions): CookerLesson | undefined {
  const { memory: _, ...cooker } = plan.cooker
  const plain: CookPlan = { ...plan, cooker }
  const { seed = 1, kernel = 'plain' } = options
  const fitting: AssimilateOptions = { seed, kernel, members: 1, endsAtSlice: true }
  const of = prepared(plain, seed, cookAllBy(kernel))
  const { fit } = assimilate(plain, observed, { ...fitting, of })
  if (fit === undefined) return undefined
  const warmUpS = warmedUpIn(observed)
  return {
    cook: options.cook,
    date: options.date,
    ...learnt(fit, COOKERS[cooker.kind].levelSdK, slopesAbout(plain, of, fit, kernel)),
    ...(warmUpS === undefined ? {} : { warmUpS }),
  }
}

function warmedUpIn({ marks = [] }: Observed): number | undefined {
  const at = (moment: string) => marks.find((mark) => mark.moment === moment)?.t
  const [lit, steady] = [at('fire-lit'), at('cooker-steady')]
  return lit !== undefined && steady !== undefined && steady > lit ? steady - lit : undefined
}

const NAMES = ['level', ...PACE_NAMES] as const
const SLOPE_STEP = 0.3
/** How far up the cook its pace is taken: late enough to count, early enough that no member's stage is over. */
const PACE_AT = 0.8

/** d ln(time to a core) / d draw about the cook's best member, for each name of the pace. */
function slopesAbout(plan: CookPlan, of: ReturnType<typeof prepared>, { best }: Fit, kernel: KernelName): number[] {
  const input = { startC: plan.roast.start, thicknessSpread: of.geometry.thicknessSpread, habits: of.setting.habits }
  const still = { normal: () => 0, uniform: () => 0.5 }
  const beside = PACE_NAMES.map((name): Latents => ({ ...best, [name]: best[name] + sideOf(best[name]) }))
  const members = [best, ...beside].map((z) => memberOf(z, input, still))
  const runs = cookAllBy(kernel)({ ...of.setting, endsAtSlice: true }, members)
  const [first, ...others] = runs.map(({ trace }) => trace.probeC)
  const pullS = runs[0]?.moments.pull ?? Infinity
  if (first === undefined || !Number.isFinite(pullS)) return PACE_NAMES.map(() => 0)
  const levelC = first[Math.floor((PACE_AT * pullS) / SAMPLE_S)] as number
  const lnTo = (probeC: ArrayLike<number>) => Math.log(reachedS(probeC, levelC))
  return others.map((probeC, i) => {
    const slope = (lnTo(probeC) - lnTo(first)) / sideOf(best[PACE_NAMES[i] as (typeof PACE_NAMES)[number]])
    return Number.isFinite(slope) ? slope : 0
  })
}
const sideOf = (value: number) => (value > 0 ? -SLOPE_STEP : SLOPE_STEP)
function reachedS(probeC: ArrayLike<number>, levelC: number): number {
  for (let i = 1; i < probeC.length; i++) {
    const [before, now] = [probeC[i - 1] as number, probeC[i] as number]
    if (now >= levelC) return SAMPLE_S * (i - (now - levelC) / Math.max(1e-9, now - before))
  }
  return Infinity
}

function learnt({ names, shift, covariance }: Fit, levelSdK: number, slopes: readonly number[]) {
  const n = names.length
  const share = NAMES.map((name) => BELONGS[name])
  const at = NAMES.map((name) => names.indexOf(name))
  const rows = [NAMES.map((name) => (name === 'level' ? levelSdK : 0)), [0, ...slopes]] as const
  const middle = (row: readonly number[]) =>
    row.reduce((sum, b, i) => sum + b * (share[i] as number) * (shift[at[i] as number] as number), 0)
  const together = (a: readonly number[], b: readonly number[]) => {
    let sum = 0
    a.forEach((x, i) => {
      const [r, rowAt] = [share[i] as number, at[i] as number]
      sum += x * (b[i] as number) * r * (1 - r)
      b.forEach((y, j) => {
        sum += x * r * (covariance[rowAt * n + (at[j] as number)] as number) * (share[j] as number) * y
      })
    })
    return sum
  }
  const before = (row: readonly number[]) => Math.sqrt(row.reduce((sum, b, i) => sum + b * b * (share[i] as number), 0))
  const belief = (row: readonly number[]) => ({
    mean: middle(row),
    sd: Math.sqrt(together(row, row)),
    before: before(row),
  })
  const [level, pace] = rows.map(belief) as [CookerLesson['level'], CookerLesson['pace']]
  const tie = level.sd * pace.sd > 0 ? together(rows[0], rows[1]) / (level.sd * pace.sd) : 0
  return { level, pace, tie }
}

/** Symmetric, two by two: level and level, level and pace, pace and pace. */
type Two = readonly [number, number, number]
const inverse = ([a, b, c]: Two): Two => {
  const d = a * c - b * b
  return [c / d, -b / d, a / d]
}
const plus = (x: Two, y: Two, factor = 1): Two => [x[0] + factor * y[0], x[1] + factor * y[1], x[2] + factor * y[2]]
const on = ([a, b, c]: Two, [x, y]: readonly [number, number]) => [a * x + b * y, b * x + c * y] as const

/** What several cooks teach together; nothing of none. A cook that stands twice in the list counts once. */
export function combineLessons(lessons: readonly CookerLesson[]): CookerMemory | undefined {
  const each = [...new Map(lessons.map((lesson) => [`${lesson.date} ${lesson.cook}`, lesson])).values()]
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
