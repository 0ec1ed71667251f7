import type { Layout, PlacedShot } from '../day/layout'
import { formatClock, fromIso } from '../plan/clock'
import type { Shoot, Shot } from '../plan/shoot'
import { formatDuration, seconds } from '../units'
import { heatedBy, isOutdoors, searsHot } from './hearth'
import { shotNumbers } from './shot-numbers'

/** One shot's kit. The plan does not know the lens: it is written in by hand. */
export interface ShotKit {
  readonly time: string
  readonly shot: string
  readonly camera: string
  readonly place: string
  readonly needs: string
}

/** What each placed shot asks for, by time. */
export function shotKit(shoot: Shoot, layout: Layout): ShotKit[] {
  const numbers = shotNumbers(shoot)
  return [...layout.shots]
    .sort((a, b) => fromIso(a.setupStart) - fromIso(b.setupStart))
    .map((placed) => {
      const shot = shoot.shots?.find(({ id }) => id === placed.id)
      return {
        time: formatClock(fromIso(placed.setupStart), shoot.zone),
        shot: `${numbers.get(placed.id) ?? ''} ${shot?.title ?? placed.id}`.trim(),
        camera: placed.camera.join(', '),
        place: shot?.place ?? '',
        needs: shot ? shotNeeds(shot, placed) : '',
      }
    })
}

/** Common practice, no source. */
function shotNeeds(shot: Shot, placed: PlacedShot): string {
  const rolls = fromIso(placed.end) - fromIso(placed.start)
  return [
    shot.locked ? `tripod, power and a card for ${formatDuration(seconds(Math.round(rolls / 60_000) * 60))}` : '',
    shot.needs?.includes('sound') ? 'microphone' : '',
    shot.light === 'night' || shot.light === 'twilight' ? 'lamp' : '',
    shot.lid === 'open' ? 'lens away from steam' : '',
  ]
    .filter(Boolean)
    .join(', ')
}

/** Spares stand in the plan's own figures: how long each camera rolls. */
export function cameraKit(shoot: Shoot, layout: Layout): string[] {
  return (shoot.cameras ?? []).flatMap(({ id }) => {
    const shots = layout.shots.filter(({ camera }) => camera.includes(id))
    const rollMs = shots.reduce((sum, shot) => sum + fromIso(shot.end) - fromIso(shot.start), 0)
    if (shots.length === 0) return []
    const roll = formatDuration(seconds(Math.ceil(rollMs / 60_000) * 60))
    return [
      `Camera ${id}: ${shots.length} ${shots.length === 1 ? 'shot' : 'shots'}, ${roll} of rolling; batteries and cards for twice that.`,
    ]
  })
}

/** What the plan's own stages ask for; common practice, no source. */
export function cookKit(shoot: Shoot): string[] {
  const stages = shoot.cooks.flatMap((cook) => cook.stages)
  const does = (what: string) => stages.some((stage) => stage.do === what)
  const probeOut = shoot.cooks.some(({ stages: each }) => {
    const lead = each.flatMap((stage) => (stage.do === 'roast' ? (stage.probe?.lead ?? []) : []))[0]
    return lead !== undefined && each.some((stage) => stage.do === 'sear' && stage.at > lead)
  })
  const solid = heatedBy(shoot, 'charcoal', 'wood')
  const cooks = shoot.cooks.length
  return [
    `Probe thermometer, ${cooks === 1 ? 'one and a spare' : `${cooks} and a spare`}; spare batteries.`,
    probeOut
      ? 'Quick hand thermometer: the probe is out of the roast before the sear, its cable would not stand it.'
      : '',
    searsHot(shoot)
      ? 'Heat gloves to the elbow, two pairs; tongs of 40 cm and more, two.'
      : 'Oven gloves, two pairs; tongs.',
    solid
      ? 'Lighter, fire lighters and something to light the charcoal in; rake; metal bin with a lid for the ash.'
      : '',
    heatedBy(shoot, 'gas') ? 'Second gas bottle, full; soap water to try the hose for leaks.' : '',
    shoot.cooks.some(({ cooker }) => cooker.kind === 'water-bath')
      ? 'Bags that stand the heat, two a roast; clips; a lid for the bath.'
      : '',
    isOutdoors(shoot)
      ? 'Extinguisher, fire blanket, two buckets of water beside the cooker.'
      : 'Fire blanket and extinguisher in reach of the oven.',
    does('hold') ? 'Insulated box, warmed, with towels; or an oven that holds at the temperature of the plan.' : '',
    does('rest') ? 'Board with a groove, rack, foil to lay over loosely.' : '',
    'Carving knife, a second knife, cloths, serving dish.',
    'Soap, water and paper for hands; one board for raw and another for done.',
  ].filter(Boolean)
}
