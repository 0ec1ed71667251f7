/** The cook plan as the simulation follows it: what is fixed in time for every member. */
import type { CookPlan, Stage } from './cook'
import { COOKERS } from './cooker'

/** How long the lid is off for a turn, and for the probe where it does not go in with the turn. */
export const TURN_OPEN_S = 60
export const PROBE_OPEN_S = 60
/** How long the lid is off to add charcoal; wood goes through the door of its firebox, pellets into a hopper. [estimate] */
const REFUEL_OPEN_S = 60

type Heated = Extract<Stage, { do: 'roast' | 'sear' | 'hold' }>
export type CourseStage = Exclude<Stage, { do: 'preheat' }>

export interface Course {
  readonly preheatC: number
  /** The meat goes in as the cooker is switched on. */
  readonly cold: boolean
  readonly stages: readonly CourseStage[]
  /** Index of the last roast stage (its end is pull), of the last heated stage before a rest (off-heat). */
  readonly pullStage: number
  readonly offHeatStage: number
  /** Index of the last stage in the cooker itself: its fire is done with then. */
  readonly fireStage: number
  /** +Infinity where it stands at half the time to a pull that likely never comes. */
  readonly turnS: number | undefined
  readonly probeInS: number | undefined
  /** Lid openings, [from, to] in s after meat-on, in order. */
  readonly lid: readonly (readonly [number, number])[]
  /** Where the probe's cable does not stand the sear: its planned length once the fire is hot. */
  readonly searForS: number | undefined
}

/** What a first look at the cook has told: the likely time to pull, and how long the sear takes once the fire is hot. */
export interface FirstLook {
  readonly pullS: number
  readonly searS: number
}

/** A box keeps warm; it does not heat. */
const isHeated = (stage: Stage): stage is Heated =>
  stage.do === 'roast' || stage.do === 'sear' || (stage.do === 'hold' && stage.in !== 'box')
/** Whether the cooker's own fire must burn for it; over direct heat it is mostly the same fire. */
export const needsFire = (stage: Stage): stage is Heated =>
  stage.do === 'roast' || stage.do === 'sear' || (stage.do === 'hold' && (stage.in ?? 'cooker') === 'cooker')

const lastIndex = <T>(items: readonly T[], wanted: (item: T) => boolean) =>
  items.reduce((found, item, i) => (wanted(item) ? i : found), -1)

const roastsOf = (plan: CookPlan) => plan.stages.filter((stage) => stage.do === 'roast')
export const turnOf = (plan: CookPlan) => roastsOf(plan).find((roast) => roast.turn)?.turn
export const probeOf = (plan: CookPlan) => roastsOf(plan).find((roast) => roast.probe)?.probe
export const searOf = (plan: CookPlan) => plan.stages.find((stage) => stage.do === 'sear')

/** Whether the probe must come out before the sear. */
export const leadTooWeak = (plan: CookPlan) => {
  const lead = probeOf(plan)?.lead
  const sear = searOf(plan)
  return lead !== undefined && sear !== undefined && sear.at > lead
}
/** Whether times of the course hang on how the cook itself goes, so that a first look is needed. */
export const needsFirstLook = (plan: CookPlan) => {
  const turn = turnOf(plan)
  const sear = searOf(plan)
  return (turn !== undefined && 'at' in turn) || (leadTooWeak(plan) && sear !== undefined && 'core' in sear.until)
}

export function courseOf(plan: CookPlan, look?: FirstLook): Course {
  const preheat = plan.stages.find((stage) => stage.do === 'preheat')
  const stages = plan.stages.filter((stage): stage is CourseStage => stage.do !== 'preheat')
  const firstRest = stages.findIndex((stage) => stage.do === 'rest')
  const beforeRest = firstRest < 0 ? stages : stages.slice(0, firstRest)
  const firstHeated = stages.find(isHeated)
  const turnS = turnTime(plan, look)
  const probeInS = probeTime(plan, turnS, look)
  return {
    preheatC: preheat?.at ?? firstHeated?.at ?? plan.surroundings.air,
    cold: preheat?.cold ?? false,
    stages,
    pullStage: lastIndex(stages, (stage) => stage.do === 'roast'),
    offHeatStage: lastIndex(beforeRest, isHeated),
    fireStage: lastIndex(stages, needsFire),
    turnS,
    probeInS,
    lid: openings(plan, turnS, probeInS),
    searForS: leadTooWeak(plan) && look !== undefined ? look.searS : undefined,
  }
}

function turnTime(plan: CookPlan, look: FirstLook | undefined) {
  const turn = turnOf(plan)
  if (turn === undefined) return undefined
  if ('after' in turn) return turn.after
  return look === undefined ? undefined : look.pullS / 2
}

function probeTime(plan: CookPlan, turnS: number | undefined, look: FirstLook | undefined) {
  const probe = probeOf(plan)
  if (probe === undefined) return undefined
  if (probe.at === 'start') return 0
  if (probe.at !== 'turn') return probe.at
  // at a turn that never comes it would never read: then it is in from the start
  const goesInS = turnS ?? (look === undefined ? 0 : look.pullS / 2)
  return Number.isFinite(goesInS) ? goesInS : 0
}

function openings(plan: CookPlan, turnS: number | undefined, probeInS: number | undefined) {
  const all: Span[] = plan.lidOpenings.map(({ at, open }) => [at, at + open])
  if (turnS !== undefined && Number.isFinite(turnS)) all.push([turnS, turnS + TURN_OPEN_S])
  if (probeInS !== undefined && probeInS > 0) all.push([probeInS, probeInS + PROBE_OPEN_S])
  if (COOKERS[plan.cooker.kind].fuel === 'charcoal')
    for (const { at } of plan.cooker.refuel ?? []) all.push([at, at + REFUEL_OPEN_S])
  return merged(all.filter(([from, to]) => to > 0 && to > from))
}

type Span = readonly [number, number]
/** Overlapping openings are one. */
function merged(spans: Span[]) {
  const joined: Span[] = []
  for (const [from, to] of spans.sort((a, b) => a[0] - b[0])) {
    const last = joined[joined.length - 1]
    if (last !== undefined && from <= last[1]) joined[joined.length - 1] = [last[0], Math.max(last[1], to)]
    else joined.push([Math.max(0, from), to])
  }
  return joined
}
