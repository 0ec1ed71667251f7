import { quantileOf } from '../model/quantiles'
import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { roastOf, type Side, type SideSlot, sideLastsS, sideSlot, sideTaskIds } from '../plan/side-tasks'
import type { CookTimes } from './cook-times'
import type { Crew } from './crew'
import type { DayClock } from './day-clock'
import type { Layout } from './layout'
import { RULES } from './rules'
import { type Edge, edgeAt, type FloatContext, type ShotWindow } from './shot-window'

/** A side on the board: when it may be done, whole minutes in the cooker, and which tasks are its going on and coming off. */
export interface SideJob {
  readonly side: Side
  readonly cook: number
  /** Null where the moment it is made for never comes. */
  readonly slot: SideSlot | null
  /** From the minute it goes on to the minute it is off. */
  readonly lasts: number
  /** Of the problem's tasks. */
  readonly on: number
  readonly off: number
  /** Where a running day has it in already: the minute it went on, and who put it there. */
  readonly isOn: { readonly minute: number; readonly people: readonly number[] } | null
}

/** `first`: how many tasks stand before those of the sides. */
export const sideJobs = (shoot: Shoot, cooks: readonly CookTimes[], first: number): SideJob[] =>
  (shoot.sides ?? []).map((side, i) => {
    const cook = cookIndex(shoot, cooks, side.id)
    return {
      side,
      cook,
      slot: slotOf(side, cooks[cook]),
      lasts: sideLastsS(side) / 60,
      on: first + 2 * i,
      off: first + 2 * i + 1,
      isOn: null,
    }
  })

/** Of the cook that a shot, task or side belongs to; the first where it is none of these. */
export const cookIndex = (shoot: Shoot, cooks: readonly CookTimes[], cook: string | undefined): number =>
  Math.max(
    0,
    cooks.findIndex(({ id }) => id === roastOf(shoot, cook)),
  )

function slotOf(side: Side, cook: CookTimes | undefined): SideSlot | null {
  return sideSlot(side, (moment, which) => {
    const times = cook?.sorted(moment)
    const at = times ? quantileOf(times, which === 'early' ? 0.05 : 0.5) : Number.POSITIVE_INFINITY
    return Number.isFinite(at) ? at * 60 : null
  })
}

/** When a side is raw, in the cooker or hot, whichever of its minutes the layout takes. */
export function sideWindow(side: Side, state: string | undefined, cook: number, context: FloatContext): ShotWindow {
  const slot = slotOf(side, context.cooks[cook])
  const moment = side.from ?? side.ready ?? 'first-slice'
  const at = (minutes: number): Edge => (slot ? fixed(cook, minutes) : edgeAt(context, cook, null, moment, 0))
  const [first, last] = slot ? [Math.floor(slot.firstS / 60), Math.ceil(slot.lastS / 60)] : [0, 0]
  const lasts = sideLastsS(side) / 60
  switch (state) {
    case 'raw':
      return { lo: [], hi: [at(first - lasts)] }
    case 'cooking':
      return { lo: [at(last - lasts + 1)], hi: [at(first - 1)] }
    case 'hot':
      return { lo: [at(last)], hi: [at(first + RULES.sideHotMin)] }
    default:
      return { lo: [], hi: [] }
  }
}
/** A side is handled by the clock: its minute is the same in every member. */
const fixed = (base: number, likely: number): Edge => ({ base, likely, sample: Float64Array.of(likely) })

/** On a running day: what is in already, or about to go in, is in for its time from then on. `earliest`: what still can move. */
export function sidesStanding({ sides, crew, clock }: SidesOf, previous: Layout, earliest: number): SideJob[] {
  return sides.map((job) => {
    const on = previous.tasks.find(({ id }) => id === sideTaskIds(job.side).on)
    const minute = on && Math.round(clock.fromInstant(fromIso(on.start)))
    if (on === undefined || minute === undefined || minute >= earliest) return job
    return { ...job, isOn: { minute, people: on.people.map((id) => crew.people.indexOf(id)).filter((p) => p >= 0) } }
  })
}
interface SidesOf {
  readonly sides: readonly SideJob[]
  readonly crew: Crew
  readonly clock: DayClock
}
