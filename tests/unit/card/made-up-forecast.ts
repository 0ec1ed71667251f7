import type { CookPlan } from '../../../lib/model/cook'
import type { Forecast } from '../../../lib/model/forecast'
import type { MomentId } from '../../../lib/model/moment-ids'
import { spreadOf } from '../../../lib/model/quantiles'
import { celsius, frac, kilograms, metres, metresPerSecond, seconds } from '../../../lib/units'
import { madeUpSlice } from '../made-up-slice'

/** A small repeatable source of chance for tests. */
export function chance(seed: number) {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

export interface Made {
  readonly roastMin?: number
  readonly sear?: boolean
  readonly pull?: number
  readonly slicedC?: number
  readonly cut?: string
  readonly cooker?: CookPlan['cooker']['kind']
  readonly restMin?: number
  readonly spread?: number
}

export function madeUpPlan(made: Made = {}): CookPlan {
  const { sear = true, pull = 46, cut = 'lamb-leg-bone-in' } = made
  return {
    id: 'hero',
    roast: { cut, mass: kilograms(3.2), start: celsius(4), thickness: metres(0.12) },
    cooker: { kind: made.cooker ?? 'kettle-charcoal' },
    stages: [
      { do: 'preheat', at: celsius(150) },
      {
        do: 'roast',
        at: celsius(150),
        until: { core: celsius(pull) },
        turn: { after: seconds(3600) },
        probe: { at: 'turn' },
      },
      ...(sear ? [{ do: 'sear', at: celsius(320), until: { core: celsius(pull + 6) } } as const] : []),
      { do: 'rest', until: { after: seconds((made.restMin ?? 15) * 60) }, max: seconds(40 * 60) },
    ],
    surroundings: { air: celsius(14), wind: metresPerSecond(2), humidity: frac(0.6), altitude: metres(0) },
    lidOpenings: [],
  }
}

/** A forecast whose members scatter about round numbers: no physics, only the shape of one, to test the card by. */
export function madeUpForecast(made: Made = {}, seed = 1, members = 64): Forecast {
  const random = chance(seed)
  const wobble = () => (random() + random() + random() + random() - 2) * (made.spread ?? 1)
  const per = (make: () => number) => Float64Array.from({ length: members }, make)
  const cook = madeUpPlan(made)
  const sear = cook.stages.some((s) => s.do === 'sear')
  const pull = per(() => ((made.roastMin ?? 160) + 20 * wobble()) * 60)
  const off = pull.map((t) => (sear ? t + (12 + 2 * wobble()) * 60 : t))
  const slice = off.map((t) => t + (made.restMin ?? 15) * 60)
  const sliced = made.slicedC ?? 57
  const offCore = per(() => sliced - 5 + wobble())
  const sliceCore = offCore.map((c) => c + 5 + 0.5 * wobble())
  const [startS, stepS] = [-3600, 600]
  const count = 30
  const grid = (value: (m: number, t: number) => number) =>
    Float32Array.from({ length: members * count }, (_, i) => value(Math.floor(i / count), startS + (i % count) * stepS))
  const core = grid((m, t) => 4 + Math.max(0, Math.min(1, t / (slice[m] ?? 1))) * ((sliceCore[m] ?? 0) - 4))
  const moments: Partial<Record<MomentId, Float64Array>> = {
    'fire-lit': per(() => -(50 + 4 * wobble()) * 60),
    'cooker-steady': per(() => -600),
    'meat-on': per(() => 0),
    turn: per(() => 3600),
    'probe-in': per(() => 3600),
    pull,
    ...(sear ? { 'vents-open': pull, 'sear-start': pull.map((t) => t + 240) } : {}),
    'off-heat': off,
    'carryover-peak': slice.map((t) => t + 1200),
    'first-slice': slice,
  }
  const share = spreadOf<number>(per(() => 0.6 + 0.03 * wobble()))
  const cutFace: Forecast['cutFace'] = {
    thickness: metres(0.12),
    width: metres(0.18),
    depthM: [0, 0.005, 0.01, 0.015, 0.02, 0.03, 0.045, 0.06],
    peakC: [160, 90, 76, 68, 63, 60, 58, 57],
    slicedC: [60, 70, 68, 65, 62, 60, 58, 57],
    areaBelow: [58, 60, 65, 70].map((limitC, i) => ({
      limitC,
      share: {
        low: frac(share.low - 0.2 + 0.1 * i),
        likely: frac(share.likely - 0.2 + 0.1 * i),
        high: frac(share.high - 0.2 + 0.1 * i),
      },
    })),
    bandDepth: [],
    shareAbove: [],
  }
  return {
    modelVersion: 'made-up',
    kernel: 'plain',
    seed,
    members,
    cook,
    moments,
    trace: { startS, stepS, count, cookerC: grid(() => 150), surfaceC: grid(() => 90), coreC: core, probeC: core },
    offHeat: { coreC: offCore, probeC: offCore.map((c) => c + 2) },
    atSlice: { coreC: sliceCore, probeC: sliceCore.map((c) => c + 2) },
    peakCoreC: sliceCore.map((c) => c + 4),
    lossFrac: per(() => 0.19 + 0.01 * wobble()),
    lethalityLog: per(() => 1 + 0.2 * wobble()),
    lethalityAt: new Float64Array(members),
    radial: { radiusM: 0.065, exponent: 1.2 },
    cutFace,
    slice: madeUpSlice(cutFace),
    warnings: [],
  }
}
