import { windowOf } from '../model/quantiles'
import { seconds } from '../units'
import { captureOf } from './capture'
import type { DayForecast } from './day-forecast'
import type { Draft, DutyPlace, Place } from './draft'
import type { FloatJob } from './float-job'
import type { Call, Conflict, Dropped, Layout, Meal, PlacedShot, PlacedTask } from './layout'
import type { MomentJob } from './moment-job'
import { personalDays } from './personal'
import { shareWatches } from './place-tasks'
import type { DayProblem } from './problem'

export type Told = { readonly dropped: readonly Dropped[]; readonly conflicts: readonly Conflict[] }

/** The search's day as the contract has it, with the capture its own ensemble promises. */
export function toLayout(
  problem: DayProblem,
  draft: Draft,
  duties: readonly DutyPlace[],
  told: Told,
  forecasts: ReadonlyMap<string, DayForecast>,
): Layout {
  const { clock, shoot, cooks } = problem
  const base = {
    start: clock.toIso(draft.meatOn[0] ?? draft.crewCall),
    meatOn: Object.fromEntries(cooks.map((c, i) => [c.id, clock.toIso(draft.meatOn[i] as number)])),
    crewCall: clock.toIso(draft.crewCall),
    wrap: clock.toIso(draft.wrap),
    shots: shotsOf(problem, draft),
    calls: problem.moments.flatMap((job, i) => callFor(problem, draft, job, draft.moments[i] ?? null)),
    tasks: duties.map((d) => taskOf(problem, d)),
    meals: draft.meals
      .map(
        (m): Meal => ({
          start: clock.toIso(m.start),
          end: clock.toIso(m.end),
          people: names(problem, m.people),
        }),
      )
      .sort((a, b) => (a.start < b.start ? -1 : 1)),
    personal: personalDays(problem, draft, duties).map(({ person, call, wrap }) => ({
      person: problem.crew.people[person] as string,
      call: clock.toIso(call),
      wrap: clock.toIso(wrap),
    })),
    dropped: told.dropped,
    conflicts: told.conflicts,
  }
  const none = { each: {}, joint: 0 }
  return { ...base, capture: captureOf(shoot, { ...base, capture: { ...none, openLoop: none } }, forecasts) }
}

const names = ({ crew }: DayProblem, people: readonly number[]) => people.map((p) => crew.people[p] as string)

function shotsOf(problem: DayProblem, draft: Draft): PlacedShot[] {
  const placed = (job: MomentJob | FloatJob, place: Place | null | undefined, hold: PlacedShot['hold']) =>
    place ? [{ at: place.setupStart, shot: shotOf(problem, job.shot.id, place, hold) }] : []
  return [
    ...problem.moments.flatMap((job, i) => placed(job, draft.moments[i], 'hard')),
    ...problem.floats.flatMap((job, i) => placed(job, draft.floats[i], 'tentative')),
  ]
    .sort((a, b) => a.at - b.at)
    .map((p) => p.shot)
}

function shotOf({ clock, crew }: DayProblem, id: string, place: Place, hold: PlacedShot['hold']): PlacedShot {
  const { operators, hands, cameras } = place.mode
  return {
    id,
    setupStart: clock.toIso(place.setupStart),
    start: clock.toIso(place.start),
    end: clock.toIso(place.end),
    people: [...operators, ...hands].map((p) => crew.people[p] as string),
    camera: cameras.map((c) => crew.cameras[c] as string),
    hold,
  }
}

function callFor(problem: DayProblem, draft: Draft, job: MomentJob, place: Place | null): Call[] {
  if (!place) return []
  const { clock, crew, cooks } = problem
  const cook = cooks[job.cook] as DayProblem['cooks'][number]
  const zero = draft.meatOn[job.cook] as number
  const window = windowOf(job.times.map((t) => t * 60))
  const iso = (s: number | null) => (s === null ? null : clock.toIso(zero + s / 60))
  const { rule } = job
  return [
    {
      id: `call-${job.shot.id}`,
      for: job.shot.id,
      moment: job.moment,
      cook: cook.id,
      standby: clock.toIso(
        Math.floor(Math.min(place.setupStart, rule.by === 'clock' ? zero + rule.standby : Infinity)),
      ),
      window: { early: iso(window.early), likely: iso(window.likely), late: iso(window.late) },
      trigger: rule.by === 'trigger' ? { cook: cook.id, probe: rule.probe } : null,
      follows: rule.by === 'follows' ? { moment: rule.moment, after: seconds(Math.round(rule.afterMin * 60)) } : null,
      people: [...place.mode.operators, ...place.mode.hands].map((p) => crew.people[p] as string),
    },
  ]
}

function taskOf(problem: DayProblem, duty: DutyPlace): PlacedTask {
  const job = problem.tasks[duty.task] as DayProblem['tasks'][number]
  return {
    id: job.task.id,
    start: problem.clock.toIso(duty.start),
    end: problem.clock.toIso(duty.end),
    people: names(problem, duty.people),
  }
}

/** Bound tasks as placed, and the watches shared out around shots elsewhere and meals. */
export function dutiesOf(problem: DayProblem, draft: Draft): DutyPlace[] {
  const empty = () => problem.crew.people.map((): { start: number; end: number }[] => [])
  const away = empty()
  const meals = empty()
  const leave = (place: Place | null | undefined, isAway: boolean) => {
    if (!place || !isAway) return
    const span = { start: Math.floor(place.setupStart), end: Math.ceil(place.end) }
    for (const p of [...place.mode.operators, ...place.mode.hands]) away[p]?.push(span)
  }
  const elsewhere = (place: string | undefined) => place !== undefined && place !== 'cooker'
  for (const [i, job] of problem.moments.entries()) leave(draft.moments[i], elsewhere(job.shot.place))
  for (const [i, job] of problem.floats.entries()) leave(draft.floats[i], job.away)
  problem.hours.forEach(({ from, to }, p) => {
    away[p]?.push({ start: Number.NEGATIVE_INFINITY, end: from }, { start: to, end: Number.POSITIVE_INFINITY })
  })
  for (const meal of draft.meals) for (const p of meal.people) meals[p]?.push(meal)
  return [...draft.duties, ...shareWatches(problem, draft.meatOn, { away, meals })]
}
