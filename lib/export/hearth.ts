import type { CookerKind } from '../model/cook'
import type { Shoot } from '../plan/shoot'

/** What heats a cooker and where it stands: what kit and hazards go by. */
export interface Hearth {
  readonly heat: 'charcoal' | 'wood' | 'gas' | 'electric'
  readonly outdoors: boolean
}

const HEARTHS: Readonly<Record<CookerKind, Hearth>> = {
  oven: { heat: 'electric', outdoors: false },
  'convection-oven': { heat: 'electric', outdoors: false },
  'ceramic-charcoal': { heat: 'charcoal', outdoors: true },
  'kettle-charcoal': { heat: 'charcoal', outdoors: true },
  'offset-wood': { heat: 'wood', outdoors: true },
  // Wood that an electric screw feeds.
  pellet: { heat: 'wood', outdoors: true },
  'gas-grill': { heat: 'gas', outdoors: true },
  'water-bath': { heat: 'electric', outdoors: false },
}
const PLUGGED: readonly CookerKind[] = ['oven', 'convection-oven', 'pellet', 'water-bath']

export const hearthOf = (kind: CookerKind): Hearth => HEARTHS[kind]

export const heatedBy = (shoot: Shoot, ...heats: readonly Hearth['heat'][]) =>
  shoot.cooks.some(({ cooker }) => heats.includes(hearthOf(cooker.kind).heat))
export const isOutdoors = (shoot: Shoot) => shoot.cooks.some(({ cooker }) => hearthOf(cooker.kind).outdoors)
export const isPluggedIn = (shoot: Shoot) => shoot.cooks.some(({ cooker }) => PLUGGED.includes(cooker.kind))

/** From here on fat on the grate flares; [estimate] */
const FAT_FLARES_C = 230
export const searsHot = (shoot: Shoot) =>
  shoot.cooks.some(({ stages }) => stages.some((stage) => stage.do === 'sear' && stage.at >= FAT_FLARES_C))
