import { type Beside, besideOf } from '@/lib/export/cut-face-beside'
import { anotherHeat } from '@/lib/model/another-heat'
import type { Forecast } from '@/lib/model/forecast'
import type { Shoot } from '@/lib/plan/shoot'
import type { Celsius, UnitSystem } from '@/lib/units'
import { forecastsOf } from '../worked-out'

/** The first cook's slice at another heat, to the same middle; null where most never come to it. */
export function sliceAt(shoot: Shoot, at: Celsius, units: UnitSystem): Beside | null {
  const plan = forecastsOf(shoot).get(shoot.cooks[0]?.id ?? '') as Forecast
  const other = anotherHeat(plan, at)
  return other && besideOf(plan, other, units)
}
