import type { DayForecast } from '../day/day-forecast'
import type { CookPlan } from '../model/cook'
import type { MomentId } from '../model/moment-ids'
import { chanceOf } from '../model/random'

/**
 * A cook's joint moments as a committed day carries them, whole seconds by member, so that no change of the model alters
 * the day. Invented statistics. The probe warms as a lagged power of time that reads `PULL_C` at pull.
 */
export interface StandIn {
  readonly fireLitS: number
  readonly restS: number
  readonly steadyS: readonly number[]
  readonly pullS: readonly number[]
  readonly lagS: readonly number[]
  /** From pull to the sear, from there to off-heat, from there to the peak. */
  readonly toSearS: readonly number[]
  readonly searS: readonly number[]
  readonly toPeakS: readonly number[]
}
/** Likely time to pull and how far members spread about it (in the logarithm). */
export type Invented = {
  readonly seed: number
  readonly members: number
  readonly toPullMin: number
  readonly spread: number
  readonly restMin: number
}
const START_C = 4
const PULL_C = 57
const STEP_S = 60

export function standIn({ seed, members, toPullMin, spread, restMin }: Invented): StandIn {
  const draws = Array.from({ length: members }, (_, m) => {
    const { normal } = chanceOf(seed, m, 0x7374)
    return Array.from({ length: 6 }, normal) as [number, number, number, number, number, number]
  })
  const column = (minutes: (z: (typeof draws)[number]) => number) => draws.map((z) => Math.round(minutes(z) * 60))
  return {
    fireLitS: -45 * 60,
    restS: restMin * 60,
    steadyS: column((z) => -12 + 3 * z[0]),
    pullS: column((z) => toPullMin * Math.exp(spread * z[1])),
    lagS: column((z) => Math.max(4, Math.min(0.4 * toPullMin, 20 + 4 * z[2]))),
    toSearS: column((z) => Math.max(2, 5.5 + z[3])),
    searS: column((z) => Math.max(2, 6 + 1.5 * z[4])),
    toPeakS: column((z) => Math.max(5, 25 + 6 * z[5])),
  }
}

export function forecastFrom(cook: CookPlan, stand: StandIn): DayForecast {
  const members = stand.pullS.length
  const moments = momentsFrom(stand)
  const last = Math.max(...(moments['first-slice'] as Float64Array))
  return { members, cook, moments, trace: traceFrom(stand, Math.ceil(last / STEP_S) + 30) }
}

function momentsFrom(stand: StandIn): Record<MomentId, Float64Array> {
  const from = (value: (m: number) => number) => Float64Array.from(stand.pullS, (_, m) => value(m))
  const { fireLitS, restS, steadyS, pullS, toSearS, searS, toPeakS } = stand
  const half = [...pullS].sort((a, b) => a - b)[pullS.length >> 1] as number
  const off = (m: number) => (pullS[m] as number) + (toSearS[m] as number) + (searS[m] as number)
  return {
    'fire-lit': from(() => fireLitS),
    'cooker-steady': from((m) => steadyS[m] as number),
    'meat-on': from(() => 0),
    turn: from(() => Math.round(half / 2)),
    'probe-in': from(() => Math.round(half / 2)),
    pull: from((m) => pullS[m] as number),
    'vents-open': from((m) => (pullS[m] as number) + 30),
    'sear-start': from((m) => (pullS[m] as number) + (toSearS[m] as number)),
    'off-heat': from(off),
    'carryover-peak': from((m) => off(m) + (toPeakS[m] as number)),
    'first-slice': from((m) => off(m) + restS),
  }
}

function traceFrom({ pullS, lagS }: StandIn, count: number): DayForecast['trace'] {
  const members = pullS.length
  const probeC = new Float32Array(members * count)
  const shape = (s: number, lag: number) => Math.max(0, s - lag) ** 1.3
  for (let m = 0; m < members; m++) {
    const [pull, lag] = [pullS[m] as number, lagS[m] as number]
    for (let i = 0; i < count; i++)
      probeC[m * count + i] = START_C + ((PULL_C - START_C) * shape(i * STEP_S, lag)) / shape(pull, lag)
  }
  const flat = (level: number) => new Float32Array(members * count).fill(level)
  return { startS: 0, stepS: STEP_S, count, cookerC: flat(150), surfaceC: flat(100), coreC: probeC, probeC }
}
