import { MOMENT_IDS, type MomentId } from '../../model/moment-ids'
import type { Shoot, Shot, Task } from '../../plan/shoot'
import { roastOf, tasksOf } from '../../plan/side-tasks'
import type { DayForecast } from '../day-forecast'
import type { Call, Layout, PlacedShot } from '../layout'
import { LIMITS } from './limits'
import { servedForecast } from './served'
import { type WallClock, wallClock } from './wall-clock'

export interface Span {
  readonly start: number
  readonly end: number
}
/** A placed shot beside what was asked; instants in ms, NaN where the layout's text is no time. */
export interface Booked extends Span {
  readonly id: string
  readonly shot: Shot
  readonly placed: PlacedShot
  readonly setup: number
  readonly cook: string
  readonly people: readonly string[]
  readonly cameras: readonly string[]
}
export interface Duty extends Span {
  readonly id: string
  readonly task: Task
  readonly people: readonly string[]
}
export interface MealSpan extends Span {
  readonly people: readonly string[]
}
/** Instants in ms; null where that many members never get there. */
export type MomentTimes = {
  readonly early: number | null
  readonly likely: number | null
  readonly late: number | null
}

/** Everything the rules look at, worked out once from the shoot, the layout and the forecasts. */
export interface Facts {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly clock: WallClock
  readonly booked: readonly Booked[]
  readonly duties: readonly Duty[]
  readonly meals: readonly MealSpan[]
  readonly crewCall: number
  readonly wrap: number
  readonly meatOn: (cook: string) => number
  readonly forecast: (cook: string) => DayForecast | undefined
  readonly moment: (cook: string, moment: MomentId) => MomentTimes | null
  /** A moment's likely instant or a clock time; null where it never comes or is unknown. */
  readonly edge: (cook: string, edge: string) => number | null
  readonly titleOf: (shot: string) => string
}

export const isMoment = (edge: string): edge is MomentId => (MOMENT_IDS as readonly string[]).includes(edge)
/** In a day laid out anew: past or about to begin by then, as it was told before; nobody plans it any more. */
export const stands = ({ layout }: Facts, b: Booked): boolean =>
  layout.asOf !== undefined && b.setup <= Date.parse(layout.asOf) + LIMITS.standsMs
export const begun = ({ layout }: Facts, b: Booked): boolean =>
  layout.asOf !== undefined && b.start <= Date.parse(layout.asOf)
export const overlap = (a: Span, b: Span): boolean => a.start < b.end && b.start < a.end
/** Somebody in sight of the fire; their hands stay free for what is shot at the cooker. */
export const isWatch = (task: Task): boolean =>
  task.takes === undefined && (task.from === 'fire-lit' || task.id.includes('watch'))
/** A moment is at the cooker where its shot names no place. */
export const placeOf = (b: Booked): string => b.shot.place ?? (b.shot.at ? 'cooker' : '')
/** Time the people need before the moment, ms: the setup the layout gives them, and what is rolled ahead of it. */
export const leadMs = (b: Booked): number =>
  Math.min((b.shot.setup ?? 0) * 1000, b.start - b.setup) + (b.shot.at?.before ?? 0) * 1000
const begins = (b: Booked) => Math.min(b.setup, b.start)
/** Who is bound, and when: a locked-off camera needs its people only while it is set up. */
export const peopleSpan = (b: Booked): Span => ({ start: begins(b), end: b.shot.locked ? b.start : b.end })
export const cameraSpan = (b: Booked): Span => ({ start: begins(b), end: b.end })

export function gatherFacts(shoot: Shoot, layout: Layout, given: ReadonlyMap<string, DayForecast>): Facts {
  const clock = wallClock(shoot.zone)
  const firstCook = shoot.cooks[0]?.id ?? ''
  const meatOn = (cook: string) => Date.parse(layout.meatOn[cook] ?? '')
  const forecasts = new Map(given)
  const first = given.get(firstCook)
  if (first)
    forecasts.set(
      firstCook,
      servedForecast(shoot, first, meatOn(firstCook), (at) => clockEdge(shoot, clock, at)),
    )
  const moment = (cook: string, id: MomentId) =>
    fromForecast(forecasts.get(cook), id, meatOn(cook)) ?? fromCalls(layout.calls, cook, id)
  const shots = new Map((shoot.shots ?? []).map((s) => [s.id, s]))
  const tasks = new Map(tasksOf(shoot).map((t) => [t.id, t]))
  const edge = (cook: string, at: string) =>
    isMoment(at) ? (moment(cook, at)?.likely ?? null) : clockEdge(shoot, clock, at)
  return {
    shoot,
    layout,
    clock,
    booked: layout.shots.flatMap((placed) => bookedOf(shoot, placed, shots.get(placed.id))),
    duties: layout.tasks.flatMap((d) => {
      const task = tasks.get(d.id)
      return task ? [{ ...spanOf(d), id: d.id, task, people: d.people }] : []
    }),
    meals: layout.meals.map((m) => ({ ...spanOf(m), people: m.people })),
    crewCall: Date.parse(layout.crewCall),
    wrap: Date.parse(layout.wrap),
    meatOn,
    forecast: (cook) => forecasts.get(cook),
    moment,
    edge,
    titleOf: (id) => `"${shots.get(id)?.title ?? id}"`,
  }
}

const spanOf = (text: { start: string; end: string }): Span => ({
  start: Date.parse(text.start),
  end: Date.parse(text.end),
})

function bookedOf(shoot: Shoot, placed: PlacedShot, shot: Shot | undefined): Booked[] {
  if (!shot) return []
  const { id, people, camera: cameras } = placed
  const setup = Date.parse(placed.setupStart)
  return [{ ...spanOf(placed), id, shot, placed, setup, people, cameras, cook: roastOf(shoot, shot.cook) ?? '' }]
}

/** A clock time before the crew call is the next day's. */
function clockEdge(shoot: Shoot, clock: WallClock, at: string): number {
  const same = clock.instantOf(shoot.date, at)
  const call = shoot.day?.call ? clock.instantOf(shoot.date, shoot.day.call) : Number.NEGATIVE_INFINITY
  return same < call ? clock.instantOf(nextDate(shoot.date), at) : same
}
export const nextDate = (date: string) => new Date(Date.parse(`${date}T00:00Z`) + 86_400_000).toISOString().slice(0, 10)

/** Nearest-rank neighbours of a quantile, never-arriving members last; Infinity where the rank falls among them. */
export function rankAround(samples: Float64Array, p: number): { below: number; at: number; above: number } {
  const sorted = samples.toSorted()
  const rank = (sorted.length - 1) * p
  const pick = (i: number) => sorted[Math.min(Math.max(i, 0), sorted.length - 1)] ?? Number.POSITIVE_INFINITY
  const [low, high] = [pick(Math.floor(rank)), pick(Math.ceil(rank))]
  const at = low === high ? low : low + (high - low) * (rank - Math.floor(rank))
  return { below: pick(Math.floor(rank) - 1), at, above: pick(Math.ceil(rank) + 1) }
}

function fromForecast(forecast: DayForecast | undefined, id: MomentId, meatOnMs: number): MomentTimes | null {
  const samples = forecast?.moments[id]
  if (!samples) return null
  const at = (p: number) => {
    const s = rankAround(samples, p).at
    return Number.isFinite(s) ? meatOnMs + s * 1000 : null
  }
  return { early: at(0.05), likely: at(0.5), late: at(0.95) }
}

function fromCalls(calls: readonly Call[], cook: string, id: MomentId): MomentTimes | null {
  const window = calls.find((c) => c.cook === cook && c.moment === id)?.window
  if (!window) return null
  const at = (text: string | null) => (text === null ? null : Date.parse(text))
  return { early: at(window.early), likely: at(window.likely), late: at(window.late) }
}
