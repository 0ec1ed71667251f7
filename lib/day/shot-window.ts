import type { MomentId } from '../model/moment-ids'
import { quantileOf } from '../model/quantiles'
import type { Shoot, Shot } from '../plan/shoot'
import { sideOf } from '../plan/side-tasks'
import type { CookTimes } from './cook-times'
import type { Crew } from './crew'
import type { DayClock } from './day-clock'
import { handleMin, type MomentJob, minutesOf } from './moment-job'
import { RULES } from './rules'
import { type Sorted, sorted } from './samples'
import { sideWindow } from './side-jobs'
import { lightBands } from './sun'

/** What a shot hangs on when its moment comes sooner or later than likely. */
export type Anchor = { readonly cook: number; readonly moment: MomentId }
export interface FloatContext {
  readonly shoot: Shoot
  readonly crew: Crew
  readonly cooks: readonly CookTimes[]
  readonly clock: DayClock
  readonly moments: readonly MomentJob[]
}

/**
 * A bound of a shot's window. `likely` and the sample are minutes after the meat-on of cook `base`, or minutes of the day
 * where `base` is -1. For an anchored shot the sample says where the bound lies beside its likely place on the sheet.
 */
export interface Edge {
  readonly base: number
  readonly likely: number
  readonly sample: Sorted
}
/** The roll lies at or after every `lo` and at or before every `hi`. */
export interface ShotWindow {
  readonly lo: readonly Edge[]
  readonly hi: readonly Edge[]
}

type Context = Pick<FloatContext, 'cooks' | 'clock'>

/** A clock time or a moment of the cook. */
export function edgeOf(context: Context, cook: number, anchor: Anchor | null, edge: string): Edge {
  if (edge.includes(':')) return clockEdge(context.clock.fromClock(edge), anchor, context.cooks)
  return edgeAt(context, cook, anchor, edge as MomentId, 0)
}

/** So many minutes after a moment of a cook. A moment that the cook does not have never comes. */
export function edgeAt(context: Context, cook: number, anchor: Anchor | null, moment: MomentId, plus: number): Edge {
  const times = context.cooks[cook]?.at(moment)
  if (!times) return { base: cook, likely: Number.POSITIVE_INFINITY, sample: Float64Array.of(Number.POSITIVE_INFINITY) }
  const likely = quantileOf(sorted(times), 0.5) + plus
  const shift = anchor ? shiftsOf(context.cooks, anchor) : null
  const sample = sorted(times.map((t, m) => t + plus - (shift?.[m] ?? 0)).map((t) => (Number.isNaN(t) ? Infinity : t)))
  return { base: cook, likely, sample }
}

/** How much later than likely the anchor's moment comes, by member. */
function shiftsOf(cooks: readonly CookTimes[], anchor: Anchor): Float64Array {
  const times = cooks[anchor.cook]?.at(anchor.moment) ?? new Float64Array(0)
  const likely = quantileOf(sorted(times), 0.5)
  return times.map((t) => t - likely)
}

export function clockEdge(minute: number, anchor: Anchor | null, cooks: readonly CookTimes[]): Edge {
  const sample = anchor ? sorted(shiftsOf(cooks, anchor).map((s) => minute - s)) : Float64Array.of(minute)
  return { base: -1, likely: minute, sample }
}

/** The roll with its handles, in whole minutes. */
export const rolledMin = (shot: Shot) => Math.ceil(minutesOf(shot.roll, RULES.rollMin) + 2 * handleMin)

/** The windows a shot may stand in; several where its light comes more than once. */
export function shotWindows(
  shot: Shot,
  cook: number,
  anchor: Anchor | null,
  earlier: readonly string[],
  context: FloatContext,
): ShotWindow[] {
  const lo: Edge[] = []
  const hi: Edge[] = [...deadlinesOf(shot, context, anchor)]
  if (shot.between) {
    lo.push(edgeOf(context, cook, anchor, shot.between[0]))
    hi.push(edgeOf(context, cook, anchor, shot.between[1]))
  }
  if (shot.pin !== undefined) {
    const pin = context.clock.fromClock(shot.pin)
    lo.push(clockEdge(pin, anchor, context.cooks))
    hi.push(clockEdge(pin + rolledMin(shot), anchor, context.cooks))
  }
  const side = sideOf(context.shoot, shot.cook)
  const state = side ? sideWindow(side, shot.state, cook, context) : stateEdges(shot, cook, anchor, context)
  lo.push(...state.lo)
  hi.push(...state.hi)
  for (const job of context.moments)
    if (earlier.includes(job.shot.id)) lo.push(edgeAt(context, job.cook, anchor, job.moment, job.after + handleMin))
  return lightsOf(shot, context).map((light) => ({
    lo: [...lo, ...light.map((b) => clockEdge(b.start, anchor, context.cooks))],
    hi: [...hi, ...light.map((b) => clockEdge(b.end, anchor, context.cooks))],
  }))
}

/** How long food keeps a state; common practice, no source. */
function stateEdges(shot: Shot, cook: number, anchor: Anchor | null, context: FloatContext): ShotWindow {
  const at = (moment: MomentId, plus = 0) => edgeAt(context, cook, anchor, moment, plus)
  switch (shot.state) {
    case 'raw':
    case 'seasoned':
      return { lo: [], hi: [at('meat-on')] }
    case 'cooking':
      return { lo: [at('meat-on')], hi: [at('off-heat')] }
    case 'hot':
      return { lo: [at('off-heat')], hi: [at('off-heat', RULES.hotMin)] }
    case 'rested':
      return { lo: [at('first-slice', -restedFor(context, cook))], hi: [at('first-slice')] }
    case 'sliced':
      return { lo: [at('first-slice')], hi: [at('first-slice', RULES.slicedMin)] }
    default:
      return { lo: [], hi: [] }
  }
}

/** Minutes between the end of the (last) rest and the first slice: a hold after it. */
function restedFor({ cooks }: FloatContext, cook: number): number {
  const stages = cooks[cook]?.forecast.cook.stages ?? []
  const rest = stages.findLastIndex((s) => s.do === 'rest')
  const hold = stages.slice(rest + 1).find((s) => s.do === 'hold')
  const held = hold && 'after' in hold.until ? hold.until.after / 60 : 0
  return Math.min(held, RULES.restedMin)
}

type Span = { readonly start: number; readonly end: number }
/** No light asked: one window without bounds of light. */
function lightsOf(shot: Shot, context: FloatContext): (readonly Span[])[] {
  if (!shot.light) return [[]]
  return lightSpans(context, shot.light).map((span) => [span])
}

/** Every spell of a light in the day's two days, minutes of the day. */
export function lightSpans({ shoot, clock }: Pick<FloatContext, 'shoot' | 'clock'>, light: string): Span[] {
  const [from, to] = [clock.toInstant(1440), clock.toInstant(clock.length - 1440)]
  return lightBands(shoot.place, from, to)
    .filter((band) => band.light === light)
    .map((band) => ({ start: clock.fromInstant(band.start), end: clock.fromInstant(band.end) }))
}

/** A float's deadline from moment shots that name it in `after`. */
const deadlinesOf = (shot: Shot, context: FloatContext, anchor: Anchor | null): Edge[] =>
  context.moments
    .filter((job) => job.shot.after?.includes(shot.id))
    .map((job) => edgeAt(context, job.cook, anchor, job.moment, -job.before - job.setup))
