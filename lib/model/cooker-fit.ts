/**
 * How the cooker has run, from the sensor the crew clipped into it: reading - trend = own bias + drift + slow drift + noise.
 * The drift is the model's own (Ornstein-Uhlenbeck); the slow one is a fire that fades, or was set off its mark (Matérn-3/2).
 * A Kalman filter on whole minutes, and its smoother; what is not read stays as the model draws it.
 */
import type { CookerHabits } from './cooker'
import type { Belief } from './cooker-memory'
import { DRIFT_KNOT_S, type Drift, driftStep } from './cooker-path'
import type { Chance } from './random'
import type { Sample } from './readings'

/** Slow drift against the fast one's spread, and its memory. [estimate] */
const SLOW_RATIO = 1.5
const SLOW_S = 3600
/** More is no drift. It fades with the excess over the day's air, so that a cooker that cools stays about that. [estimate] */
const MOST_DRIFT_K = 60
/** The fire is tended until meat-on. [estimate] */
const AT_MEAT_ON_SD_K = 1
/** A sensor's flicker; half a thermostat's swing comes on top. [estimate] */
const SENSOR_SD_K = 1
/** Of the variance between meat level and dial, what a sensor clipped somewhere shows too. [estimate] */
export const SHARED_WITH_SENSOR = 0.6

type Four = [number, number, number, number]
/** Fast drift, slow drift, its slope a minute, bias of the sensor. */
const STATES = 4
type Matrix = Float64Array

export interface CookerFit {
  /** Drift of the cooker at whole minutes until now, K. */
  readonly pastK: readonly number[]
  /** Sensor against dial, K, with its variance left. */
  readonly biasK: number
  readonly biasVarianceK2: number
  /** What the meat's level is known by: its mean and standard deviation, in its own standard deviations. */
  readonly level: { readonly mean: number; readonly sd: number }
  readonly seen: boolean
  /** A member's drift: the past as it was, the future from the member's own stream. */
  readonly drift: (own: Chance | undefined) => Drift
}

export interface CookerFitOptions {
  readonly habits: CookerHabits
  readonly windMpS: number
  readonly nowS: number
  /** The meat's level before any reading, in its own standard deviations. */
  readonly level?: Belief
}
const KIND: Belief = { mean: 0, sd: 1 }

export function fitCooker(
  samples: readonly Sample[],
  trendC: (timeS: number) => number,
  { habits, windMpS, nowS, level = KIND }: CookerFitOptions,
): CookerFit {
  const step = driftStep(habits, windMpS)
  const law = lawOf(habits, step)
  const minutes = Math.floor(nowS / DRIFT_KNOT_S)
  const seen = perMinute(samples, trendC, minutes)
  const { levelSdK } = habits
  // the sensor's bias as the level lets it be expected: as wide as its kind's where nothing is remembered
  const biasVarianceK2 = levelSdK ** 2 * (1 + SHARED_WITH_SENSOR ** 2 * (level.sd ** 2 - 1))
  const biasMeanK = SHARED_WITH_SENSOR * levelSdK * level.mean
  const noiseK2 = SENSOR_SD_K ** 2 + habits.cycleK ** 2 / 2
  const start = {
    mean: Float64Array.of(0, 0, 0, biasMeanK),
    cov: diagonal([AT_MEAT_ON_SD_K ** 2, AT_MEAT_ON_SD_K ** 2, law.slopeK2, biasVarianceK2]),
  }
  if (seen.size === 0) return unseen(level, biasMeanK, biasVarianceK2, step, minutes)
  const filtered = filter(law, start, seen, noiseK2, minutes)
  const smooth = smoothed(law, filtered).map(driftK)
  const last = filtered[filtered.length - 1] as State
  const bias = last.mean[3] as number
  const leftK2 = last.cov[3 * STATES + 3] as number
  const told = 1 - Math.min(1, leftK2 / (biasVarianceK2 || 1))
  // of the bias beside its mean, what the level has of it
  const shared = levelSdK > 0 ? (SHARED_WITH_SENSOR * level.sd ** 2 * levelSdK ** 2) / biasVarianceK2 : 0
  const roots = { last: rootOf(last.cov), kick: rootOf(law.kick) }
  return {
    pastK: smooth,
    biasK: bias,
    biasVarianceK2: leftK2,
    level: {
      mean: level.mean + (levelSdK > 0 ? (shared * (bias - biasMeanK)) / levelSdK : 0),
      sd: level.sd * Math.sqrt(1 - SHARED_WITH_SENSOR * shared * told),
    },
    seen: true,
    drift: (own) => driftFrom(smooth, last, law, step, roots, own),
  }
}

/** Nothing read: until now it ran as set, and from now on as a fire does. */
function unseen(level: Belief, biasK: number, biasVarianceK2: number, step: Step, minutes: number): CookerFit {
  const pastK = new Array<number>(minutes + 1).fill(0)
  return {
    pastK,
    biasK,
    biasVarianceK2,
    level,
    seen: false,
    drift: (own) => {
      let beforeK = 0
      return followed((minute) => {
        beforeK = minute <= minutes || own === undefined ? 0 : step.keep * beforeK + step.kickK * own.normal()
        return beforeK
      })
    },
  }
}

type Step = ReturnType<typeof driftStep>
interface Law {
  readonly turn: Matrix
  readonly kick: Matrix
  readonly slopeK2: number
}
function lawOf(habits: CookerHabits, { keep, kickK }: Step): Law {
  const perMinute = (Math.sqrt(3) / SLOW_S) * DRIFT_KNOT_S
  const fade = Math.exp(-perMinute)
  const varianceK2 = (SLOW_RATIO * habits.driftSdK) ** 2
  const slopeK2 = perMinute ** 2 * varianceK2
  const [a, b, c, d] = [fade * (1 + perMinute), fade, -fade * perMinute ** 2, fade * (1 - perMinute)]
  const turn = new Float64Array([keep, 0, 0, 0, 0, a, b, 0, 0, c, d, 0, 0, 0, 0, 1])
  const kick = new Float64Array(STATES * STATES)
  kick[0] = kickK ** 2
  kick[5] = varianceK2 - (a * a * varianceK2 + b * b * slopeK2)
  kick[6] = kick[9] = -(a * c * varianceK2 + b * d * slopeK2)
  kick[10] = slopeK2 - (c * c * varianceK2 + d * d * slopeK2)
  return { turn, kick, slopeK2 }
}

/** The mean deviation from the trend in each minute that was read, with the number of readings. */
function perMinute(samples: readonly Sample[], trendC: (timeS: number) => number, minutes: number) {
  const sums = new Map<number, { sumK: number; count: number }>()
  for (const { timeS, tempC } of samples) {
    const minute = Math.round(timeS / DRIFT_KNOT_S)
    if (minute < 0 || minute > minutes) continue
    const { sumK, count } = sums.get(minute) ?? { sumK: 0, count: 0 }
    sums.set(minute, { sumK: sumK + tempC - trendC(timeS), count: count + 1 })
  }
  return new Map([...sums].map(([minute, { sumK, count }]) => [minute, sumK / count]))
}

interface State {
  readonly mean: Float64Array
  readonly cov: Matrix
  /** Before the minute's reading. */
  readonly aheadMean?: Float64Array
  readonly aheadCov?: Matrix
}
function filter(law: Law, start: State, seen: ReadonlyMap<number, number>, noiseK2: number, minutes: number): State[] {
  const states: State[] = []
  let now = start
  for (let minute = 0; minute <= minutes; minute++) {
    const mean = minute === 0 ? now.mean : apply(law.turn, now.mean)
    const cov = minute === 0 ? now.cov : plus(product(product(law.turn, now.cov), transposed(law.turn)), law.kick)
    const read = seen.get(minute)
    now = {
      ...(read === undefined ? { mean, cov } : updated(mean, cov, read, noiseK2)),
      aheadMean: mean,
      aheadCov: cov,
    }
    states.push(now)
  }
  return states
}
/** The sensor shows drift, slow drift and its bias together. */
const SHOWN: Four = [1, 1, 0, 1]
function updated(mean: Float64Array, cov: Matrix, readK: number, noiseK2: number) {
  const toward = apply(cov, Float64Array.from(SHOWN))
  const shown = SHOWN.reduce((sum, h, i) => sum + h * (mean[i] as number), 0)
  const spread = SHOWN.reduce((sum, h, i) => sum + h * (toward[i] as number), noiseK2)
  const gain = toward.map((x) => x / spread)
  return {
    mean: mean.map((x, i) => x + (gain[i] as number) * (readK - shown)),
    cov: cov.map((x, j) => x - (gain[Math.floor(j / STATES)] as number) * (toward[j % STATES] as number)),
  }
}
/** Means of the states given all readings, earliest first. */
function smoothed(law: Law, states: readonly State[]): Float64Array[] {
  const means = states.map(({ mean }) => mean)
  for (let i = states.length - 2; i >= 0; i--) {
    const here = states[i] as State
    const next = states[i + 1] as State
    const off = (means[i + 1] as Float64Array).map((x, j) => x - ((next.aheadMean as Float64Array)[j] as number))
    const back = apply(inverse(next.aheadCov as Matrix), off)
    const pull = apply(here.cov, apply(transposed(law.turn), back))
    means[i] = here.mean.map((x, j) => x + (pull[j] as number))
  }
  return means
}

/** The past as it was, then a future drawn from where it has come to. */
function driftFrom(
  smooth: readonly number[],
  last: State,
  law: Law,
  step: Step,
  roots: { readonly last: Matrix; readonly kick: Matrix },
  own: Chance | undefined,
): Drift {
  let state: Float64Array | undefined
  let spare = new Float64Array(STATES)
  const future = () => {
    if (state === undefined) state = drawn(last.mean, roots.last, own)
    else if (own === undefined) state = apply(law.turn, state)
    else {
      const now = goOn(spare, state, law.turn, roots.kick, own)
      spare = state as Float64Array<ArrayBuffer>
      state = now
    }
    return state
  }
  let before = 0
  return followed((k) => {
    const past = smooth[k]
    if (past) return past
    // the path is joined where it is, whatever is left open of its last value
    if (k === smooth.length) before = (smooth[k - 1] as number) - driftK(future())
    before *= step.keep
    return Math.max(-MOST_DRIFT_K, Math.min(MOST_DRIFT_K, driftK(future()) + before))
  })
}
const driftK = (state: Float64Array) =>
  Math.max(-MOST_DRIFT_K, Math.min(MOST_DRIFT_K, (state[0] as number) + (state[1] as number)))

const followed = (path: (minute: number) => number): Drift => ({ path, normal: () => 0, uniform: () => 0.5 })
function drawn(mean: Float64Array, root: Matrix, own: Chance | undefined): Float64Array {
  if (own === undefined) return mean
  const normals = Float64Array.from({ length: STATES }, () => own.normal())
  const off = apply(root, normals)
  return mean.map((x, i) => x + (off[i] as number))
}

const of = (m: Matrix, i: number, j: number) => m[i * STATES + j] as number
/** The next minute's state, written to `out`: this is asked for each minute of each member. */
function goOn(out: Float64Array, state: Float64Array, turn: Matrix, root: Matrix, own: Chance): Float64Array {
  const [n0, n1, n2] = [own.normal(), own.normal(), own.normal()]
  const [fast, slow, slope] = [state[0] as number, state[1] as number, state[2] as number]
  out[0] = of(turn, 0, 0) * fast + of(root, 0, 0) * n0
  out[1] = of(turn, 1, 1) * slow + of(turn, 1, 2) * slope + of(root, 1, 1) * n1
  out[2] = of(turn, 2, 1) * slow + of(turn, 2, 2) * slope + of(root, 2, 1) * n1 + of(root, 2, 2) * n2
  out[3] = state[3] as number
  return out
}

function diagonal(values: Four): Matrix {
  const m = new Float64Array(STATES * STATES)
  values.forEach((value, i) => {
    m[i * STATES + i] = value
  })
  return m
}
function apply(m: Matrix, x: Float64Array): Float64Array {
  const out = new Float64Array(STATES)
  for (let i = 0; i < STATES; i++)
    for (let j = 0; j < STATES; j++) out[i] = (out[i] as number) + (m[i * STATES + j] as number) * (x[j] as number)
  return out
}
function product(a: Matrix, b: Matrix): Matrix {
  const out = new Float64Array(STATES * STATES)
  for (let i = 0; i < STATES; i++)
    for (let j = 0; j < STATES; j++) {
      let sum = 0
      for (let k = 0; k < STATES; k++) sum += (a[i * STATES + k] as number) * (b[k * STATES + j] as number)
      out[i * STATES + j] = sum
    }
  return out
}
const transposed = (m: Matrix) => m.map((_, n) => m[(n % STATES) * STATES + Math.floor(n / STATES)] as number)
const plus = (a: Matrix, b: Matrix) => a.map((x, i) => x + (b[i] as number))
/** Lower root of a matrix that may be singular. */
function rootOf(cov: Matrix): Matrix {
  const l = new Float64Array(STATES * STATES)
  for (let i = 0; i < STATES; i++)
    for (let j = 0; j <= i; j++) {
      let sum = cov[i * STATES + j] as number
      for (let k = 0; k < j; k++) sum -= (l[i * STATES + k] as number) * (l[j * STATES + k] as number)
      const pivot = l[j * STATES + j] as number
      l[i * STATES + j] = i === j ? Math.sqrt(Math.max(0, sum)) : pivot > 0 ? sum / pivot : 0
    }
  return l
}
function inverse(m: Matrix): Matrix {
  const a = m.slice()
  const out = diagonal([1, 1, 1, 1])
  for (let p = 0; p < STATES; p++) {
    // covariances before a reading are positive definite but for a cooker that does not drift
    const pivot = Math.max(1e-12, a[p * STATES + p] as number)
    for (let j = 0; j < STATES; j++) {
      a[p * STATES + j] = (a[p * STATES + j] as number) / pivot
      out[p * STATES + j] = (out[p * STATES + j] as number) / pivot
    }
    for (let i = 0; i < STATES; i++) {
      if (i === p) continue
      const f = a[i * STATES + p] as number
      for (let j = 0; j < STATES; j++) {
        a[i * STATES + j] = (a[i * STATES + j] as number) - f * (a[p * STATES + j] as number)
        out[i * STATES + j] = (out[i * STATES + j] as number) - f * (out[p * STATES + j] as number)
      }
    }
  }
  return out
}
