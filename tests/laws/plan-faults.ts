/** What must be true of any forecast, and of any plan beside the same plan heavier, hotter or carried further. */

import type { CookPlan, Stage } from '../../lib/model/cook'
import { knownCutOf } from '../../lib/model/custom-cut'
import type { Forecast } from '../../lib/model/forecast'
import { MOMENT_IDS, type MomentId } from '../../lib/model/moment-ids'
import { windowOf } from '../../lib/model/quantiles'
import { celsius, kilograms } from '../../lib/units'
import { centralRun } from './cooks'

const BESIDE: readonly MomentId[] = ['turn', 'carryover-peak']
const CHAIN = MOMENT_IDS.filter((id) => !BESIDE.includes(id))
const ascends = (values: readonly number[]) => values.every((v, i) => i === 0 || v >= (values[i - 1] as number))

/** Sentences for every law that a forecast breaks; none for a sound one. */
export const forecastFaults = (forecast: Forecast): string[] => [
  ...chainFaults(forecast),
  ...windowFaults(forecast),
  ...valueFaults(forecast),
  ...heatFaults(forecast),
]

function chainFaults({ moments, members }: Forecast): string[] {
  const faults: string[] = []
  for (let m = 0; m < members; m++) {
    const times = CHAIN.flatMap((id) => (moments[id] ? [moments[id][m] as number] : []))
    if (!ascends(times)) faults.push(`member ${m}: moments out of order, ${times.join(' ')}`)
    if (moments['meat-on']?.[m] !== 0) faults.push(`member ${m}: meat-on is not time zero`)
  }
  return faults
}

function windowFaults({ moments }: Forecast): string[] {
  return Object.entries(moments).flatMap(([id, samples]) => {
    if (samples.some(Number.isNaN)) return [`${id}: a member has no number`]
    const { early, q10, likely, q90, late } = windowOf(samples)
    const known = [early, q10, likely, q90, late].map((t) => t ?? Infinity)
    return ascends(known) ? [] : [`${id}: quantiles out of order, ${known.join(' ')}`]
  })
}

function valueFaults(forecast: Forecast): string[] {
  const { trace, atSlice, offHeat, peakCoreC, lossFrac, lethalityLog } = forecast
  const within = (name: string, values: Float32Array | Float64Array, least: number, most: number) => {
    const wrong = values.findIndex((v) => !(v >= least && v <= most))
    return wrong < 0 ? [] : [`${name}[${wrong}] is ${values[wrong]}, outside ${least} to ${most}`]
  }
  const temps = { ...trace, atSlice: atSlice.coreC, slicedProbe: atSlice.probeC, offHeat: offHeat.coreC, peakCoreC }
  return [
    ...(['cookerC', 'surfaceC', 'coreC', 'probeC', 'atSlice', 'slicedProbe', 'offHeat', 'peakCoreC'] as const).flatMap(
      (name) => within(name, temps[name], -20, 450),
    ),
    ...within('lossFrac', lossFrac, 0, heldBy(forecast).losable),
    ...within('lethalityLog', lethalityLog, 0, Infinity),
  ]
}

/** Water, and water with fat, share of the raw mass. */
function heldBy({ cook }: Forecast) {
  const { composition, boneShare } = knownCutOf(cook.roast)
  const { water, fat } = composition
  return { water: water * (1 - boneShare), losable: (water + fat) * (1 - boneShare) }
}

/**
 * A cooker's layers and drift aside, meat is never hotter than what stood around it; and its middle passes the boiling
 * point only once the roast has lost as much as nearly all its water.
 */
const LAYERS_K = 60
const DRIED_THROUGH = 0.9
function heatFaults(forecast: Forecast): string[] {
  const { trace, members, lossFrac } = forecast
  for (let m = 0; m < members; m++) {
    const dry = (lossFrac[m] as number) >= DRIED_THROUGH * heldBy(forecast).water
    let hottest = -Infinity
    for (let i = m * trace.count; i < (m + 1) * trace.count; i++) {
      hottest = Math.max(hottest, trace.cookerC[i] as number, trace.coreC[m * trace.count] as number)
      const core = trace.coreC[i] as number
      if (core > hottest + LAYERS_K || (core > 101 && !dry))
        return [`member ${m}: the core stands at ${core} °C, the cooker was never above ${hottest} °C`]
    }
  }
  return []
}

const pullS = (plan: CookPlan) => centralRun(plan).moments.pull
const hotter = (plan: CookPlan, byK: number): CookPlan => ({
  ...plan,
  stages: plan.stages.map(
    (stage): Stage =>
      stage.do === 'roast' || stage.do === 'preheat' ? { ...stage, at: celsius(stage.at + byK) } : stage,
  ),
})
const heavier = (plan: CookPlan, factor: number): CookPlan => ({
  ...plan,
  roast: { ...plan.roast, mass: kilograms(plan.roast.mass * factor) },
})

/** The likely member's time to pull beside the same plan heavier and hotter; a plan that ends by time has nothing to say. */
export function comparisonFaults(plan: CookPlan): string[] {
  const roast = plan.stages.find((stage) => stage.do === 'roast')
  if (roast?.do !== 'roast' || !('core' in roast.until) || roast.max !== undefined) return []
  const plain = pullS(plan)
  const faults: string[] = []
  const similar = knownCutOf(plan.roast).sizing === 'similar' && plan.roast.thickness === undefined
  if (similar && pullS(heavier(plan, 1.15)) < plain - 1) faults.push('a heavier roast of the same shape is sooner')
  if (pullS(hotter(plan, 8)) > plain + 1) faults.push('a hotter cooker is later')
  return faults
}
