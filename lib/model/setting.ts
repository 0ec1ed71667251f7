/** What every member of a cook shares: material, shape, weather, the course of the plan. */
import type { CookPlan } from './cook'
import { COOKERS } from './cooker'
import { courseOf } from './course'
import type { Cut } from './cut'
import { lethalityPerS } from './lethality'
import { propertiesWithBone, propertyTable } from './materials'
import { matterOf } from './meat'
import type { Geometry } from './shape'
import type { Setting } from './simulate'
import { pressureAtPa } from './vapour'

export function settingOf(plan: CookPlan, cut: Cut, geometry: Geometry): Setting {
  const { air, wind, humidity, altitude } = plan.surroundings
  return {
    course: courseOf(plan),
    matter: matterOf({
      ...propertyTable(cut.composition, cut.boneShare),
      rhoKgpM3: propertiesWithBone(cut.composition, cut.boneShare, plan.roast.start).rho_KgpM3,
      water: cut.composition.water,
      boneShare: cut.boneShare,
      lethalityPerS,
    }),
    habits: COOKERS[plan.cooker.kind],
    radialAt: geometry.radialAt,
    airC: air,
    windMpS: wind,
    humidity,
    pressurePa: pressureAtPa(altitude),
  }
}
