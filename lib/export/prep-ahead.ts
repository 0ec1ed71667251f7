import type { Layout } from '../day/layout'
import { cutOf } from '../model/custom-cut'
import { formatClock, formatDay, fromIso } from '../plan/clock'
import type { Cook, Shoot } from '../plan/shoot'
import { sideTaskIds } from '../plan/side-tasks'
import { isWholeBird, thawOf } from '../plan/thaw'
import {
  formatDuration,
  formatMass,
  formatTemp,
  type Instant,
  instant,
  later,
  seconds,
  type UnitSystem,
} from '../units'
import { shotNumbers } from './shot-numbers'

/** Something to be done before the fire. `when` is written out: it may lie days before the shoot. */
export interface AheadLine {
  readonly at: Instant
  readonly when: string
  readonly what: string
}
interface Plan {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly units: UnitSystem
}

/** Thawing, seasoning and the way from the refrigerator to the fire, of every roast, by time. */
export function aheadOf(plan: Plan): AheadLine[] {
  const lines = plan.shoot.cooks.flatMap((cook) => {
    const meatOn = fromIso(plan.layout.meatOn[cook.id] ?? plan.layout.start)
    return [...thawing(plan, cook, meatOn), ...seasoning(plan, cook, meatOn), toFire(plan, cook, meatOn)]
  })
  return [...lines, ...sidesReady(plan)].sort((a, b) => a.at - b.at)
}

/** A side stands washed, cut and in its dish before it goes on; common practice, no source. */
function sidesReady(plan: Plan): AheadLine[] {
  return (plan.shoot.sides ?? []).flatMap((side) => {
    const ids = sideTaskIds(side)
    const [on, off] = [ids.on, ids.off].map((id) => plan.layout.tasks.find((task) => task.id === id))
    if (!on || !off) return []
    const at = fromIso(on.start)
    const heat = side.at === undefined ? '' : ` at ${formatTemp(side.at, plan.units)}`
    const out = formatClock(fromIso(off.start), plan.shoot.zone)
    const what = `Ready in its dish, to go on: ${side.title}. It takes ${formatDuration(side.takes)}${heat} (the crew’s own figure) and comes off at ${out}.`
    return [{ at, when: stamp(plan, at), what }]
  })
}

export const roastName = (cook: Cook) => cutOf(cook.roast)?.name ?? cook.roast.cut
/** The roast by name, with its cook where there are several. */
const named = ({ shoot }: Plan, cook: Cook) =>
  shoot.cooks.length > 1 ? `${roastName(cook)} (${cook.id})` : roastName(cook)

const stamp = ({ shoot }: Plan, at: Instant) => `${formatDay(at, shoot.zone)}, ${formatClock(at, shoot.zone)}`

function thawing(plan: Plan, cook: Cook, meatOn: Instant): AheadLine[] {
  if (!cook.roast.frozen) return []
  const { fridge, water } = thawOf(cook.roast.mass, isWholeBird(cook.roast.cut))
  const at = instant(meatOn - fridge * 1000)
  const days = fridge / 86_400
  const latest = instant(meatOn - water * 1000)
  const what = `Latest into the refrigerator to thaw, on a tray at the bottom: ${named(plan, cook)}, ${formatMass(cook.roast.mass, plan.units)}, takes ${days} ${days === 1 ? 'day' : 'days'}. If that is missed: ${formatDuration(water)} in cold water in a sealed bag, from ${stamp(plan, latest)}, the water changed every 30 min, then cooked at once.`
  return [{ at, when: `by ${stamp(plan, at)}`, what }]
}

/** The evening before; common practice, no source. */
const SALT_AHEAD_H = 18

/** Salted on camera where a shot does it, else ahead. */
function seasoning(plan: Plan, cook: Cook, meatOn: Instant): AheadLine[] {
  const { shoot, layout } = plan
  const shot = shoot.shots?.find(
    (each) =>
      (each.cook ?? shoot.cooks[0]?.id) === cook.id && (each.state === 'seasoned' || each.id.startsWith('season')),
  )
  const placed = layout.shots.find(({ id }) => id === shot?.id)
  if (shot && placed) {
    const at = fromIso(placed.start)
    const number = shotNumbers(shoot).get(shot.id)
    return [
      {
        at,
        when: stamp(plan, at),
        what: `Seasoned on camera, shot ${number ?? ''} "${shot.title}": ${named(plan, cook)}. It stays plain until then; salt and seasoning stand weighed out, twice over for a second take.`,
      },
    ]
  }
  const at = later(meatOn, seconds(-SALT_AHEAD_H * 3600))
  const what = `Salted and left uncovered in the refrigerator: ${named(plan, cook)}. Or, if it may not be seasoned before the cameras come, salted as it goes on.`
  return [{ at, when: `${formatDay(at, shoot.zone)}, evening`, what }]
}

/** As it comes out of a refrigerator. [fsis-safe-minimum] 40 °F is its upper end; two kelvins for the way. */
const STRAIGHT_FROM_FRIDGE_C = 6.5
/** [fsis-safe-minimum] no longer than 2 h out, 1 h above 90 °F. */
const OUT_AT_MOST = { h: 2, warmH: 1, warmC: 32.2 }

function toFire(plan: Plan, cook: Cook, meatOn: Instant): AheadLine {
  const { shoot, units } = plan
  const { start } = cook.roast
  if (start <= STRAIGHT_FROM_FRIDGE_C)
    return {
      at: meatOn,
      when: stamp(plan, meatOn),
      what: `Straight from the refrigerator to the heat: ${named(plan, cook)}. The forecast counts on ${formatTemp(start, units)} in its middle. Try it with the probe.`,
    }
  const hours = (shoot.weather?.air ?? 15) > OUT_AT_MOST.warmC ? OUT_AT_MOST.warmH : OUT_AT_MOST.h
  const at = later(meatOn, seconds(-hours * 3600))
  return {
    at,
    when: `not before ${stamp(plan, at)}`,
    what: `Out of the refrigerator: ${named(plan, cook)}. The forecast counts on ${formatTemp(start, units)} in its middle when it goes on at ${formatClock(meatOn, shoot.zone)}. Try it with the probe; write what it reads into the plan if it differs.`,
  }
}
