import type { MomentId } from '../model/moment-ids'
import { seconds } from '../units'
import type { Shoot, Task } from './shoot'

/** What the crew does for a dish that shares a roast's cooker, and when; apart from the schema, so that a form can use it. */

export type Side = NonNullable<Shoot['sides']>[number]
export const sideOf = (shoot: Shoot, id: string | undefined): Side | undefined =>
  id === undefined ? undefined : shoot.sides?.find((side) => side.id === id)
/** The cook that a shot or task belongs to: a side's is the one whose cooker it shares. */
export const roastOf = (shoot: Shoot, cook: string | undefined): string | undefined =>
  sideOf(shoot, cook)?.cook ?? (sideOf(shoot, cook) || cook === undefined ? shoot.cooks[0]?.id : cook)

/** The lid is off so long as it goes on, and again as it comes off; common practice, no source. */
const HANDLED = seconds(60)
const COOKS_DO = ['cook']
export const sideTaskIds = ({ id }: Pick<Side, 'id'>) => ({ on: `${id}-on`, off: `${id}-off` })
/** What the crew does for it, as tasks; when, the layout says. */
export function sideTasks(shoot: Shoot, side: Side): { readonly on: Task; readonly off: Task } {
  const ids = sideTaskIds(side)
  const task = (id: string, does: string): Task => ({
    id,
    title: `${side.title}: ${does}`,
    cook: roastOf(shoot, side.id),
    from: 'meat-on',
    to: 'first-slice',
    takes: HANDLED,
    lid: 'open',
    needs: side.needs ?? COOKS_DO,
  })
  return { on: task(ids.on, 'on'), off: task(ids.off, 'off') }
}
/** All that the crew does beside the shots, what the sides ask for included. */
export const tasksOf = (shoot: Shoot): Task[] => [
  ...(shoot.tasks ?? []),
  ...(shoot.sides ?? []).flatMap((side) => Object.values(sideTasks(shoot, side))),
]

/** It may be done so much before it is wanted, or go on so much after: time to find hands, or a lid that is off anyway. */
export const SIDE_LEEWAY = seconds(600)
/** When a side is done, s after meat-on. `lateS`: it would have had to go on before the meat, and is so much late. */
export interface SideSlot {
  readonly firstS: number
  readonly lastS: number
  readonly lateS: number
  readonly moment: MomentId
}
/** From handing it in to having it out. */
export const sideLastsS = ({ takes }: Pick<Side, 'takes'>) => Math.ceil(takes / 60) * 60 + 2 * HANDLED
/** `at`: a moment's early or likely time, s after meat-on; null where it never comes. */
export function sideSlot(side: Side, at: (moment: MomentId, which: 'early' | 'likely') => number | null) {
  const moment = side.from ?? side.ready ?? 'first-slice'
  const likely = at(moment, 'likely')
  if (likely === null) return null
  const lasts = sideLastsS(side)
  if (side.from) return { firstS: likely + lasts, lastS: likely + lasts + SIDE_LEEWAY, lateS: 0, moment }
  if (likely < lasts) return { firstS: lasts, lastS: lasts + SIDE_LEEWAY, lateS: lasts - likely, moment }
  // Not before the moment could come at all: it would only get cold.
  const leeway = Math.min(SIDE_LEEWAY, Math.max(0, likely - (at(moment, 'early') ?? likely)))
  return { firstS: Math.max(lasts, likely - leeway), lastS: likely, lateS: 0, moment } satisfies SideSlot
}
