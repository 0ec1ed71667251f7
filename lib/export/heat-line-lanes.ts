import type { MomentId } from '../model/moment-ids'
import type { ShotBox } from './drawing'
import type { CrewFacts, HeatFacts, HeatView, MealFact, ShotFact } from './heat-line-facts'
import type { Frame } from './heat-line-frame'
import { BOX, type Box, CAMERA_LANE, isShown, type Lane, spread, x } from './heat-line-lane-boxes'
import { placeLanes } from './heat-line-place-lanes'

const PERSON_LANE = 23
/** With more shots than this in the picture a box for each is none any more: lanes are places, and shots there in a row are one. */
const MOST_BOXES = 40
/** With more people than this, those who are in no shot have no lane. */
const MOST_PEOPLE = 8

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
  readonly meals: readonly { x1: number; x2: number; top: number; bottom: number; meal: MealFact }[]
  readonly lids: readonly { readonly x1: number; readonly x2: number }[]
  readonly lidY: number
  /** Each shot's own box; none where shots in a row share one. */
  readonly own: readonly ShotBox[]
  /** Where a moment's pole ends: the upper edge of the box it calls. */
  readonly feet: ReadonlyMap<MomentId, number>
}

export function lanesOf(view: HeatView, facts: HeatFacts, frame: Frame): Lanes | null {
  const { crew } = facts
  if (!crew) return null
  const shots = crew.shots.filter((shot) => isShown(frame, shot.setup, shot.end))
  const crowded = shots.length > MOST_BOXES
  const now = view.now ?? null
  const first = crowded ? placeLanes(shots, frame, now) : cameraLanes(crew, shots, frame, now)
  const lanes = [...first, ...personLanes(crew, shots, frame, first.length, crowded)]
  const crewBottom = lanes.at(-1) ? bottomOf(lanes.at(-1) as Lane) : frame.lanes
  const twins = facts.roasts
    .slice(1)
    .filter(({ on, end }) => isShown(frame, on, end))
    .map(({ title, on, off, end }, i) => ({
      name: title,
      y: crewBottom + 12 + i * PERSON_LANE,
      on: x(frame, on),
      off: x(frame, off),
      end: x(frame, end),
    }))
  const sides = crew.sides
    .filter(({ on, off }) => isShown(frame, on, off))
    .map(({ name, on, off }, i) => ({
      name,
      on: x(frame, on),
      off: x(frame, off),
      y: crewBottom + 12 + (twins.length + i) * PERSON_LANE,
    }))
  const lidY = crewBottom + (twins.length + sides.length) * PERSON_LANE + 24
  const { tentative } = crew
  return {
    top: frame.lanes,
    crewBottom,
    bottom: lidY,
    lanes,
    twins,
    sides,
    tentative:
      tentative && isShown(frame, tentative.from, tentative.to)
        ? { x1: x(frame, tentative.from), x2: x(frame, tentative.to) }
        : null,
    meals: crew.meals.flatMap((meal) => mealBoxes(meal, lanes, frame)),
    lids: facts.lids
      .filter(({ at }) => isShown(frame, at, at))
      .map(({ at, openS }) => ({
        x1: frame.axis(at),
        x2: Math.max(frame.axis(at) + 3, x(frame, at + openS * 1000)),
      })),
    lidY,
    own: crowded ? [] : lanes.flatMap(ownBoxes),
    feet: poleFeet(crew, lanes),
  }
}
export const bottomOf = (lane: Lane) => lane.top + lane.height

const ownBoxes = ({ top, boxes }: Lane): ShotBox[] =>
  boxes.map(({ id, x1, x2 }) => ({ id, x1, x2, top: top + 6, height: BOX.height }))

function cameraLanes(crew: CrewFacts, shots: readonly ShotFact[], frame: Frame, now: number | null): Lane[] {
  return crew.cameras.map(({ id, name, operator }, i) => ({
    name,
    person: operator,
    top: frame.lanes + i * CAMERA_LANE,
    height: CAMERA_LANE,
    boxes: spread(
      shots.filter((shot) => shot.cameras.includes(id)).map((shot) => boxOf(shot, frame, now)),
      frame.right,
    ),
    bars: [],
  }))
}

function boxOf(shot: ShotFact, frame: Frame, now: number | null): Box {
  const x1 = x(frame, shot.start)
  return {
    id: shot.id,
    number: shot.number,
    name: shot.free ? shot.title : null,
    live: shot.live,
    past: now !== null && shot.end <= now,
    x1,
    x2: Math.max(x1 + BOX.least, x(frame, shot.end)),
  }
}

/** `all`: whoever stands behind a camera too, where no lane is a camera's. */
function personLanes(
  crew: CrewFacts,
  shots: readonly ShotFact[],
  frame: Frame,
  above: number,
  all: boolean,
): readonly Lane[] {
  const first = frame.lanes + above * CAMERA_LANE
  const many = crew.people.length > MOST_PEOPLE
  const inShot = (id: string) => crew.shots.some((shot) => shot.people.includes(id))
  return crew.people
    .filter((person) => (all || !person.operator) && (!many || inShot(person.id)))
    .map((person, i) => ({
      name: person.name,
      person: person.id,
      top: first + i * PERSON_LANE,
      height: PERSON_LANE,
      boxes: [],
      bars: shots
        .filter((shot) => shot.people.includes(person.id))
        .map((shot) => ({ x1: x(frame, shot.setup), x2: x(frame, shot.end), live: shot.live })),
    }))
}

/** One open box over each run of neighbouring lanes that eat together. */
function mealBoxes(meal: MealFact, lanes: readonly Lane[], frame: Frame): Lanes['meals'] {
  if (!isShown(frame, meal.start, meal.end)) return []
  const runs: Lane[][] = []
  lanes.forEach((lane, i) => {
    if (lane.person === null || !meal.people.includes(lane.person)) return
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

function poleFeet({ called }: CrewFacts, lanes: readonly Lane[]): Map<MomentId, number> {
  const feet = new Map<MomentId, number>()
  for (const { moment, shot } of called) {
    const lane = lanes.find((l) => l.boxes.some((box) => box.id === shot))
    if (lane && !feet.has(moment)) feet.set(moment, lane.top + 6)
  }
  return feet
}
