import type { CookerKind } from '../model/cook'
import { COOKERS } from '../model/cooker'
import type { Shoot } from '../plan/shoot'

/** What heats a cooker and where it stands: what kit and hazards go by. Pellets are wood. */
export interface Hearth {
  readonly heat: 'charcoal' | 'wood' | 'gas' | 'electric'
  readonly outdoors: boolean
}

const PLUGGED: readonly CookerKind[] = ['oven', 'convection-oven', 'pellet', 'water-bath']

export function hearthOf(kind: CookerKind): Hearth {
  const { fuel, indoors } = COOKERS[kind]
  const burns =
    kind === 'gas-grill' ? 'gas' : fuel === undefined ? 'electric' : fuel === 'charcoal' ? 'charcoal' : 'wood'
  return { heat: burns, outdoors: !indoors }
}

export const heatedBy = (shoot: Shoot, ...heats: readonly Hearth['heat'][]) =>
  shoot.cooks.some(({ cooker }) => heats.includes(hearthOf(cooker.kind).heat))
export const isOutdoors = (shoot: Shoot) => shoot.cooks.some(({ cooker }) => hearthOf(cooker.kind).outdoors)
export const isPluggedIn = (shoot: Shoot) => shoot.cooks.some(({ cooker }) => PLUGGED.includes(cooker.kind))

/** From here on fat on the grate flares; [estimate] */
const FAT_FLARES_C = 230
export const searsHot = (shoot: Shoot) =>
  shoot.cooks.some(({ stages }) => stages.some((stage) => stage.do === 'sear' && stage.at >= FAT_FLARES_C))
