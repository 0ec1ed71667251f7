/** A dish that shares the cooker of a cook. The model knows nothing of it: how long it takes is the crew's own figure. */
import type { Problem } from '../refusals'
import type { Celsius, Seconds } from '../units'
import * as bounds from './bounds'
import { id, list, quantity, record, text, word } from './fields'
import { momentsOf } from './moments'
import { nearest, quoted } from './nearest'
import type { Cook, Shoot, Shot } from './shoot'
import { roastOf, type Side, sideOf, sideTaskIds } from './side-tasks'

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
/** What a shot may ask of it. */
const SIDE_STATES: readonly unknown[] = ['raw', 'cooking', 'hot']

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
