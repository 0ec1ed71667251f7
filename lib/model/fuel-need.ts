/** How much fuel the cook takes: burnt until the meat is done with the fire, were it fed enough. */
import { type Frac, formatMass, type Kilograms, type UnitSystem } from '../units'
import type { CookPlan } from './cook'
import { COOKERS } from './cooker'
import type { Forecast, Spread } from './forecast'
import { type FuelKind, fuelName } from './fuel'
import type { CookAll } from './kernels'
import { spreadOf } from './quantiles'
import type { Run, Setting } from './simulate'
import type { Member } from './spread'

/** To have at hand beyond what is likely. Common practice, no source. */
const RESERVE: Frac = 0.25 as Frac
/** What to have at hand is told in steps of 100 g. */
const STEP_KG = 0.1

/**
 * Per member, kg; none for electric and gas cookers. A member whose charge ran low is cooked again with a fire that is fed,
 * for what it burnt is less than what it needs.
 */
export function fuelNeeded(plan: CookPlan, setting: Setting, runs: readonly Run[], draw: Draw, cookAll: CookAll) {
  if (COOKERS[plan.cooker.kind].fuel === undefined) return undefined
  const fed: Setting = { ...setting, site: { ...setting.site, fuelKg: Infinity, refuels: [] } }
  const limited = runs.flatMap((run, m) => (run.fuelLimited ? [m] : []))
  const needed = Float64Array.from(runs, (run) => run.fuelKg)
  cookAll(fed, limited.map(draw)).forEach((run, i) => {
    needed[limited[i] as number] = run.fuelKg
  })
  return needed
}
type Draw = (m: number) => Member

export interface FuelSummary {
  readonly kind: FuelKind
  readonly needed: Spread<Kilograms>
  readonly reserveShare: Frac
  /** To have at hand: the likely need with the reserve, or what 95 % of runs need if that is more. */
  readonly take: Kilograms
  readonly sentence: string
}
export function fuelSummary({ cook, fuelKg }: Forecast, units: UnitSystem = 'metric'): FuelSummary | undefined {
  const kind = COOKERS[cook.cooker.kind].fuel
  if (kind === undefined || fuelKg === undefined) return undefined
  const needed = spreadOf<Kilograms>(fuelKg)
  const steps = Math.max((1 + RESERVE) * needed.likely, needed.high) / STEP_KG
  const take = (Math.ceil(steps - 1e-9) / (1 / STEP_KG)) as Kilograms
  const mass = (m: Kilograms) => formatMass((Math.round(m / STEP_KG) * STEP_KG) as Kilograms, units)
  return {
    kind,
    needed,
    reserveShare: RESERVE,
    take,
    sentence: `Have ${mass(take)} of ${fuelName(kind)} at hand: the cook likely burns ${mass(needed.likely)}, from ${mass(needed.low)} to ${mass(needed.high)}.`,
  }
}
