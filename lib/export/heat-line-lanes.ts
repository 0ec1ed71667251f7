import type { Layout, Meal, PlacedShot } from '../day/layout'
import type { MomentId } from '../model/moment-ids'
import { fromIso } from '../plan/clock'
import type { Shoot, Shot } from '../plan/shoot'
import { sideTaskIds } from '../plan/side-tasks'
import { later, seconds } from '../units'
import type { ShotBox } from './drawing'
import type { HeatFacts, HeatLineCook, HeatLineInput } from './heat-line-facts'
import { momentFacts } from './heat-line-facts'
import type { Frame } from './heat-line-frame'
import { BOX, type Box, CAMERA_LANE, type Lane, spread, x } from './heat-line-lane-boxes'
import { placeLanes } from './heat-line-place-lanes'
import { cameraName, isCalledLive, isOperator, liveFrom, personName, usualOperator } from './lanes'
import { shotNumbers } from './shot-numbers'

const PERSON_LANE = 23
/** With more shots than this a box for each is no picture any more: lanes are places, and shots there in a row are one. */
const MOST_BOXES = 40

export interface Twin {
  readonly name: string
  readonly y: number
  readonly on: number
  readonly off: number
  readonly end: number
}
/** A dish beside the roast: in the cooker from on to off. */
export interface SideBar {
  readonly name: string
  readonly y: number
  readonly on: number
  readonly off: number
}
export interface Lanes {
  readonly top: number
  readonly crewBottom: number
  readonly bottom: number
  readonly lanes: readonly Lane[]
  readonly twins: readonly Twin[]
  readonly sides: readonly SideBar[]
  readonly tentative: { readonly x1: number; readonly x2: number } | null
  readonly meals: readonly { x1: number; x2: number; top: number; bottom: number; meal: Meal }[]
  readonly lids: readonly { readonly x1: number; readonly x2: number }[]
  readonly lidY: number
  /** Each shot's own box; none where shots in a row share one. */
  readonly own: readonly ShotBox[]
  /** Where a moment's pole ends: the upper edge of the box it calls. */
  readonly feet: ReadonlyMap<MomentId, number>
}

export function lanesOf(input: HeatLineInput, facts: HeatFacts, frame: Frame): Lanes | null {
  const { shoot, layout } = input
  if (!shoot || !layout) return null
  const crowded = layout.shots.length > MOST_BOXES
  const first = crowded ? placeLanes(shoot, layout, frame) : cameraLanes(shoot, layout, frame)
  const lanes = [...first, ...personLanes(shoot, layout, frame, first.length, crowded)]
  const crewBottom = lanes.at(-1) ? bottomOf(lanes.at(-1) as Lane) : frame.lanes
  const twins = input.cooks.slice(1).map((cook, i) => twinOf(cook, crewBottom + 12 + i * PERSON_LANE, frame))
  const sides = sideBars(shoot, layout, crewBottom + 12 + twins.length * PERSON_LANE, frame)
  const lidY = crewBottom + (twins.length + sides.length) * PERSON_LANE + 24
  return {
    top: frame.lanes,
    crewBottom,
    bottom: lidY,
    lanes,
    twins,
    sides,
    tentative: tentativeStretch(layout, frame),
    meals: layout.meals.flatMap((meal) => mealBoxes(meal, layout.meals, lanes, frame)),
    lids: lidOpenings(input, facts, frame),
    lidY,
    own: crowded ? [] : lanes.flatMap(ownBoxes),
    feet: poleFeet(input, lanes),
  }
}
export const bottomOf = (lane: Lane) => lane.top + lane.height

const ownBoxes = ({ top, boxes }: Lane): ShotBox[] =>
  boxes.map(({ id, x1, x2 }) => ({ id, x1, x2, top: top + 6, height: BOX.height }))

function cameraLanes(shoot: Shoot, layout: Layout, frame: Frame): Lane[] {
  const numbers = shotNumbers(shoot)
  return (shoot.cameras ?? []).map(({ id }, i) => {
    const shots = layout.shots.filter((shot) => shot.camera.includes(id)).sort((a, b) => (a.start < b.start ? -1 : 1))
    const boxes = shots.map((placed) => boxOf(placed, layout, numbers, shoot.shots ?? [], frame))
    return {
      name: cameraName(shoot, layout, id),
      person: usualOperator(shoot, layout, id),
      top: frame.lanes + i * CAMERA_LANE,
      height: CAMERA_LANE,
      boxes: spread(boxes),
      bars: [],
    }
  })
}

function boxOf(
  placed: PlacedShot,
  layout: Layout,
  numbers: ReadonlyMap<string, number>,
  shots: readonly Shot[],
  frame: Frame,
): Box {
  const shot = shots.find((s) => s.id === placed.id)
  const x1 = x(frame, placed.start)
  return {
    id: placed.id,
    number: String(numbers.get(placed.id) ?? '?'),
    name: shot?.at ? null : (shot?.title ?? placed.id),
    live: isCalledLive(placed, layout),
    x1,
    x2: Math.max(x1 + BOX.least, x(frame, placed.end)),
  }
}

/** `all`: whoever stands behind a camera too, where no lane is a camera's. */
function personLanes(shoot: Shoot, layout: Layout, frame: Frame, above: number, all: boolean): Lane[] {
  const first = frame.lanes + above * CAMERA_LANE
  return (shoot.people ?? [])
    .filter((person) => all || !isOperator(person))
    .map((person, i) => ({
      name: personName(person),
      person: person.id,
      top: first + i * PERSON_LANE,
      height: PERSON_LANE,
      boxes: [],
      bars: layout.shots
        .filter((shot) => shot.people.includes(person.id))
        .map((shot) => ({
          x1: x(frame, shot.setupStart),
          x2: x(frame, shot.end),
          live: isCalledLive(shot, layout),
        })),
    }))
}

/** From the earliest possible standby of a call made live to the end of the last such shot. */
function tentativeStretch(layout: Layout, frame: Frame): Lanes['tentative'] {
  const from = liveFrom(layout)
  if (from === null) return null
  const ends = layout.shots
    .filter((shot) => isCalledLive(shot, layout))
    .map((shot) => {
      const late = layout.calls.find((call) => call.for === shot.id)?.window.late
      return Math.max(fromIso(shot.end), late ? fromIso(late) : 0)
    })
  const inPlot = (at: number) => Math.min(frame.right, Math.max(frame.left, frame.axis(at)))
  return { x1: inPlot(from), x2: inPlot(Math.max(...ends)) }
}

/** One open box over each run of neighbouring lanes that eat together. */
function mealBoxes(meal: Meal, meals: readonly Meal[], lanes: readonly Lane[], frame: Frame): Lanes['meals'] {
  const together = meals.filter((m) => m.start === meal.start && m.end === meal.end)
  if (together[0] !== meal) return []
  const eaters = new Set(together.flatMap((m) => m.people))
  const runs: Lane[][] = []
  lanes.forEach((lane, i) => {
    if (lane.person === null || !eaters.has(lane.person)) return
    const run = runs.at(-1)
    if (run && run.at(-1) === lanes[i - 1]) run.push(lane)
    else runs.push([lane])
  })
  const [x1, x2] = [x(frame, meal.start), x(frame, meal.end)]
  return runs.map((run) => ({
    x1,
    x2,
    top: (run[0] as Lane).top + 3,
    bottom: bottomOf(run.at(-1) as Lane) - 3,
    meal,
  }))
}

/** The lid is up for turn and probe, and for what the plan opens it for besides. */
function lidOpenings(input: HeatLineInput, facts: HeatFacts, frame: Frame): Lanes['lids'] {
  const cook = input.cooks[0]
  if (!cook) return []
  const asked = cook.forecast.cook.lidOpenings.map((o) => ({ at: later(cook.meatOn, o.at), open: o.open as number }))
  const own = facts.moments
    .filter((m) => m.id === 'turn' || m.id === 'probe-in' || m.id === 'meat-on')
    .map((m) => ({ at: m.likely ?? cook.meatOn, open: 60 }))
  return [...asked, ...own].map(({ at, open }) => ({
    x1: frame.axis(at),
    x2: Math.max(frame.axis(at) + 3, frame.axis(later(at, seconds(open)))),
  }))
}

function twinOf(cook: HeatLineCook, y: number, frame: Frame): Twin {
  const facts = momentFacts(cook)
  const at = (id: MomentId) => facts.find((m) => m.id === id)?.likely
  const inPlot = (when: number) => Math.min(frame.right, Math.max(frame.left, frame.axis(when)))
  const off = at('off-heat') ?? at('pull') ?? cook.meatOn
  return {
    name: cook.title,
    y,
    on: inPlot(cook.meatOn),
    off: inPlot(off),
    end: inPlot(at('first-slice') ?? off),
  }
}

function sideBars(shoot: Shoot, layout: Layout, top: number, frame: Frame): SideBar[] {
  const placed = (shoot.sides ?? []).flatMap((side) => {
    const ids = sideTaskIds(side)
    const [on, off] = [ids.on, ids.off].map((id) => layout.tasks.find((task) => task.id === id))
    return on && off ? [{ name: side.title, on: x(frame, on.start), off: x(frame, off.end) }] : []
  })
  return placed.map((bar, i) => ({ ...bar, y: top + i * PERSON_LANE }))
}

function poleFeet({ layout }: HeatLineInput, lanes: readonly Lane[]): Map<MomentId, number> {
  const feet = new Map<MomentId, number>()
  for (const call of layout?.calls ?? []) {
    const lane = lanes.find((l) => l.boxes.some((box) => box.id === call.for))
    if (call.moment && lane && !feet.has(call.moment)) feet.set(call.moment, lane.top + 6)
  }
  return feet
}
