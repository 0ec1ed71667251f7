import type { CookPlan } from '../../../lib/model/cook'
import type { Forecast } from '../../../lib/model/forecast'
import type { MomentId } from '../../../lib/model/moment-ids'
import { chanceOf } from '../../../lib/model/random'
import { celsius, frac, kilograms, metres, metresPerSecond, seconds } from '../../../lib/units'

/** A roast with invented statistics, not the model's: rate and start differ by member, the probe warms as a lagged exponential. */
export interface Invented {
  readonly members: number
  readonly seed: number
  /** Likely minutes to pull, and its spread in the logarithm. */
  readonly toPull?: number
  readonly spread?: number
  readonly sear?: boolean
  readonly restMin?: number
}
const STEP_S = 60
const START_C = 4
const PULL_C = 46

export function syntheticForecast(id: string, invented: Invented): Forecast {
  const { members, seed, toPull = 120, spread = 0.13, sear = true, restMin = 15 } = invented
  const count = Math.ceil(toPull * 2 + 120)
  const trace = {
    startS: 0,
    stepS: STEP_S,
    count,
    cookerC: new Float32Array(members * count).fill(150),
    surfaceC: new Float32Array(members * count).fill(100),
    coreC: new Float32Array(members * count),
    probeC: new Float32Array(members * count),
  }
  const names: MomentId[] = ['fire-lit', 'cooker-steady', 'meat-on', 'turn', 'probe-in', 'pull', 'vents-open']
  names.push('sear-start', 'off-heat', 'carryover-peak', 'first-slice')
  const moments = Object.fromEntries(names.map((n) => [n, new Float64Array(members)])) as Record<MomentId, Float64Array>
  for (let m = 0; m < members; m++) {
    const { normal } = chanceOf(seed, m, 7)
    const pull = toPull * Math.exp(spread * normal())
    const lag = 20 + 4 * normal()
    fillProbe(trace, m, pull, lag)
    const at = momentsOf({ pull, toPull, sear, restMin, normal })
    for (const n of names) (moments[n] as Float64Array)[m] = at[n] * 60
  }
  const zero = new Float64Array(members)
  const level = { coreC: zero, probeC: zero }
  return {
    modelVersion: 'synthetic',
    kernel: 'plain',
    seed,
    members,
    cook: planOf(id, restMin),
    moments: sear ? moments : withoutSear(moments),
    trace,
    offHeat: level,
    atSlice: level,
    peakCoreC: zero,
    lossFrac: zero,
    lethalityLog: zero,
    lethalityAt: zero,
    radial: { radiusM: 0.065, exponent: 1.2 },
    cutFace: {} as never,
    slice: {} as never,
    warnings: [],
  }
}

function withoutSear({ 'vents-open': _vents, 'sear-start': _sear, ...rest }: Record<MomentId, Float64Array>) {
  return rest
}

/** Reads PULL_C exactly at pull, and lags at first. */
function fillProbe(trace: Forecast['trace'], member: number, pull: number, lag: number): void {
  const shape = (t: number) => Math.max(0, t - lag) ** 1.3
  for (let i = 0; i < trace.count; i++) {
    const c = START_C + ((PULL_C - START_C) * shape(i * (STEP_S / 60))) / shape(pull)
    trace.probeC[member * trace.count + i] = c
    trace.coreC[member * trace.count + i] = c - 3
  }
}

type Rolled = { pull: number; toPull: number; sear: boolean; restMin: number; normal: () => number }
function momentsOf({ pull, toPull, sear, restMin, normal }: Rolled): Record<MomentId, number> {
  const vents = pull + 0.5
  const searStart = sear ? vents + Math.max(2, 5 + normal()) : pull
  const offHeat = sear ? searStart + Math.max(2, 5 + 1.2 * normal()) : pull
  return {
    'fire-lit': -45,
    'cooker-steady': -12 + 3 * normal(),
    'meat-on': 0,
    turn: toPull / 2,
    'probe-in': toPull / 2,
    pull,
    'vents-open': vents,
    'sear-start': searStart,
    'off-heat': offHeat,
    'carryover-peak': offHeat + Math.max(5, 30 + 6 * normal()),
    'first-slice': offHeat + restMin,
  }
}

const planOf = (id: string, restMin: number): CookPlan => ({
  id,
  roast: { cut: 'lamb-leg-bone-in', mass: kilograms(3), start: celsius(START_C) },
  cooker: { kind: 'kettle-charcoal' },
  stages: [{ do: 'rest', until: { after: seconds(restMin * 60) } }],
  surroundings: { air: celsius(14), wind: metresPerSecond(3), humidity: frac(0.6), altitude: metres(0) },
  lidOpenings: [],
})
