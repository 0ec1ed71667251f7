/** What every member of a cook shares: material, shape, weather, the course of the plan. */
import type { CookPlan } from './cook'
import type { CookerSite } from './cooker-path'
import { courseOf } from './course'
import type { Cut } from './cut'
import { lethalityPerS } from './lethality'
import { propertiesWithBone, propertyTable } from './materials'
import { matterOf } from './meat'
import { habitsOf } from './memory-prior'
import type { Geometry } from './shape'
import type { Setting } from './simulate'
import { pressureAtPa } from './vapour'

/** Share of the wind that is left behind a wall or a hedge. [estimate] */
const SHELTERED_SHARE = 0.3
/** Of the fire's direct radiation, what passes a plate of bones on the under side. [estimate] */
const BONES_SHIELD = 0.5
/** Fresh fuel takes as long to catch. [estimate] */
const CATCH_S = 600

export function settingOf(plan: CookPlan, cut: Cut, geometry: Geometry): Setting {
  const { altitude } = plan.surroundings
  const rest = plan.restSurroundings ?? plan.surroundings
  return {
    course: courseOf(plan),
    matter: matterOf({
      ...propertyTable(cut.composition, cut.boneShare),
      rhoKgpM3: propertiesWithBone(cut.composition, cut.boneShare, plan.roast.start).rho_KgpM3,
      water: cut.composition.water,
      fat: cut.composition.fat,
      boneShare: cut.boneShare,
      lethalityPerS,
    }),
    habits: habitsOf(plan.cooker),
    radialAt: geometry.radialAt,
    massKg: plan.roast.mass,
    site: siteOf(plan, cut),
    rest: { airC: rest.air, windMpS: rest.wind, humidity: rest.humidity },
    pressurePa: pressureAtPa(altitude),
  }
}

export const windAtCookerMpS = ({ cooker, surroundings }: Pick<CookPlan, 'cooker' | 'surroundings'>) =>
  surroundings.wind * (cooker.sheltered ? SHELTERED_SHARE : 1)

function siteOf({ cooker, surroundings }: CookPlan, cut: Cut): CookerSite {
  const shield = cut.bone?.place === 'ribs' || cut.bone?.place === 'frame' ? BONES_SHIELD : 1
  return {
    airC: surroundings.air,
    windMpS: windAtCookerMpS({ cooker, surroundings }),
    rain: surroundings.rain,
    direct: cooker.deflector === false ? shield : 0,
    fuelKg: cooker.fuel ?? Infinity,
    refuels: (cooker.refuel ?? []).map(({ at, add }) => ({ atS: at + CATCH_S, addKg: add })),
  }
}
