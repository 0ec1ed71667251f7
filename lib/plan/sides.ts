/** A dish that shares the cooker of a cook. The model knows nothing of it: how long it takes is the crew's own figure. */
import type { MomentId } from '../model/moment-ids'
import type { Problem } from '../refusals'
import { type Celsius, type Seconds, seconds } from '../units'
import * as bounds from './bounds'
import { id, list, quantity, record, text, word } from './fields'
import { momentsOf } from './moments'
import { nearest, quoted } from './nearest'
import type { Cook, Shoot, Shot, Task } from './shoot'

const FROM = ['meat-on', 'turn', 'probe-in'] as const
const READY_AT = ['pull', 'off-heat', 'first-slice'] as const
export const SIDE = record('a side', {
  id: id('the id of a side'),
  title: text('the title', 80, 1),
  /** Whose cooker it shares; absent, the first cook's. */
  cook: id('the id of a cook').optional(),
  /** How long it is in; common practice or the crew's own trial. */
  takes: quantity<Seconds>('duration', bounds.TASK_TIME),
  /** The heat that this time is meant at. */
  at: quantity<Celsius>('temperature', bounds.COOKER_TEMP).optional(),
  /** It goes on at this moment of its cook; or else is done by `ready`; without either, by the first slice. */
  from: word('a moment for a side to go on', FROM).optional(),
  ready: word('a moment for a side to be ready', READY_AT).optional(),
  /** Who puts it on and takes it off; absent, a cook. */
  needs: list('needs', text('a role or person', 40, 1), 4, 1).optional(),
})
export type Side = NonNullable<Shoot['sides']>[number]
/** What a shot may ask of it. */
export const SIDE_STATES: readonly unknown[] = ['raw', 'cooking', 'hot']

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

export function checkSides(shoot: Shoot): Problem[] {
  const sides = (shoot.sides ?? []).flatMap((side, i) => {
    const say = (key: string, sentence: string): Problem[] => [{ pointer: `/sides/${i}/${key}`, sentence }]
    const cook = shoot.cooks.find(({ id }) => id === roastOf(shoot, side.id))
    return [
      ...checkId(shoot, side, i, say),
      ...(cook ? checkTimes(cook, side, say) : unknownCook(shoot, side, say)),
      ...checkHands(shoot, side, say),
    ]
  })
  return [...sides, ...(shoot.shots ?? []).flatMap((shot, i) => checkSideShot(shoot, shot, `/shots/${i}`))]
}
type Say = (key: string, sentence: string) => Problem[]

function checkId(shoot: Shoot, side: Side, i: number, say: Say): Problem[] {
  const own = 'Give this one its own id.'
  if (shoot.cooks.some(({ id }) => id === side.id)) return say('id', `A cook is called "${side.id}" already. ${own}`)
  if (shoot.sides?.slice(0, i).some(({ id }) => id === side.id))
    return say('id', `Another side is called "${side.id}" already. ${own}`)
  const taken = shoot.tasks?.find(({ id }) => Object.values(sideTaskIds(side)).includes(id))
  return taken ? say('id', `The task "${taken.id}" has the name that this side needs. ${own}`) : []
}

function unknownCook(shoot: Shoot, { cook }: Side, say: Say): Problem[] {
  const ids = shoot.cooks.map(({ id }) => id)
  const meant = nearest(cook ?? '', ids)
  return say('cook', `There is no cook ${quoted(cook)}. ${meant ? `Did you mean "${meant}"?` : `Write "${ids[0]}".`}`)
}

function checkTimes(cook: Cook, side: Side, say: Say): Problem[] {
  if (cook.cooker.kind === 'water-bath')
    return say('cook', `"${cook.id}" is in a water bath, where no dish cooks beside it. Choose another cook.`)
  if (side.from && side.ready)
    return say(
      'ready',
      'A side goes on "from" a moment or is "ready" at one; the time it takes says the other. Keep one.',
    )
  const moment = side.from ?? side.ready
  if (moment === undefined || momentsOf(cook).includes(moment)) return []
  const other = (side.from ? FROM : READY_AT).filter((m) => momentsOf(cook).includes(m))[0]
  return say(
    side.from ? 'from' : 'ready',
    `The plan of "${cook.id}" has no ${moment}. Write one it has, such as "${other}".`,
  )
}

function checkHands(shoot: Shoot, side: Side, say: Say): Problem[] {
  const people = shoot.people ?? []
  if (people.length === 0) return []
  const known = [...new Set(people.flatMap(({ id, roles }) => [id, ...roles]))]
  if (side.needs === undefined)
    return known.includes('cook')
      ? []
      : say('needs', `Nobody here is a cook. Write who puts it on and takes it off, such as ["${known[0]}"].`)
  return side.needs.flatMap((need, i) => {
    if (known.includes(need)) return []
    const meant = nearest(need, known)
    const right = meant ? `Did you mean "${meant}"?` : `Write a role or a person of this shoot, such as "${known[0]}".`
    return say(`needs/${i}`, `Nobody here is ${quoted(need)}. ${right}`)
  })
}

/** A shot of a side names its state; moments are the roast's. */
function checkSideShot(shoot: Shoot, shot: Shot, pointer: string): Problem[] {
  const side = sideOf(shoot, shot.cook)
  if (!side) return []
  if (shot.at)
    return [
      {
        pointer: `${pointer}/at`,
        sentence: `A side has no moments. Write "free": true and the state of "${side.id}": "raw", "cooking" or "hot".`,
      },
    ]
  if (shot.state === undefined || SIDE_STATES.includes(shot.state)) return []
  return [{ pointer: `${pointer}/state`, sentence: `A side is never ${shot.state}. Write "raw", "cooking" or "hot".` }]
}
