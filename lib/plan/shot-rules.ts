import type { MomentId } from '../model/moment-ids'
import { MOMENT_IDS } from '../model/moment-ids'
import type { Problem } from '../refusals'
import { momentsOf } from './moments'
import { listed, nearest, quoted } from './nearest'
import type { Cook, Shoot, Shot, Task } from './shoot'
import { roastOf, sideOf } from './side-tasks'

/** What is wrong with shots and tasks: their form, and names of things that the shoot does not have. */
export function checkShots(shoot: Shoot): Problem[] {
  const shots = shoot.shots ?? []
  return [
    ...shots.flatMap((shot, i) => [
      ...checkForm(shot, `/shots/${i}`),
      ...checkEdges(shoot, shot, `/shots/${i}`),
      ...checkNeeds(shoot, shot, `/shots/${i}`),
      ...checkCamera(shoot, shot, `/shots/${i}`),
    ]),
    ...(shoot.tasks ?? []).flatMap((task, i) => [
      ...checkEdges(shoot, task, `/tasks/${i}`),
      ...checkNeeds(shoot, task, `/tasks/${i}`),
    ]),
    ...checkAfter(shots),
  ]
}

const FORMS = '"at" a moment, "between" two, "from" and "to", "free": true, or in a "light"'

/** The ways in which this shot says when it stands. */
export function formsOf(shot: Shot): string[] {
  const forms: [string, boolean][] = [
    ['at', shot.at !== undefined],
    ['between', shot.between !== undefined],
    ['from', shot.from !== undefined || shot.to !== undefined],
    ['free', shot.free === true],
    ['light', shot.light !== undefined],
  ]
  return forms.flatMap(([form, given]) => (given ? [form] : []))
}

function checkForm(shot: Shot, pointer: string): Problem[] {
  const forms = formsOf(shot)
  if (forms.length === 0) return [{ pointer, sentence: `This shot has no time. It stands ${FORMS}.` }]
  if (forms.length > 1)
    return [
      {
        pointer: `${pointer}/${forms[1] === 'from' && shot.from === undefined ? 'to' : forms[1]}`,
        sentence: `This shot stands ${listed(
          forms.map((form) => `"${form}"`),
          'and',
        )} at once. Keep one of them.`,
      },
    ]
  if (shot.from !== undefined && shot.to === undefined)
    return [{ pointer, sentence: 'This shot has a "from" and no "to". Write both.' }]
  if (shot.to !== undefined && shot.from === undefined)
    return [{ pointer, sentence: 'This shot has a "to" and no "from". Write both.' }]
  if (shot.locked && shot.from === undefined)
    return [
      {
        pointer: `${pointer}/locked`,
        sentence: 'Only a shot "from" a moment "to" another can be locked off. Take "locked" out.',
      },
    ]
  if (shot.at && shot.roll !== undefined)
    return [
      {
        pointer: `${pointer}/roll`,
        sentence: 'A shot at a moment rolls from "before" to "after" it. Write these, and take "roll" out.',
      },
    ]
  return checkPin(shot, pointer)
}

/** What the meat decides no clock can. */
function checkPin(shot: Shot, pointer: string): Problem[] {
  if (shot.pin === undefined || (!shot.at && shot.from === undefined)) return []
  const what = shot.at ? 'A shot at a moment comes when the meat says' : 'This shot stands from one edge to another'
  return [{ pointer: `${pointer}/pin`, sentence: `${what}, so no time can be pinned. Take "pin" out.` }]
}

type Sited = readonly [edge: string | undefined, pointer: string]
const isMoment = (edge: string | undefined): edge is MomentId => MOMENT_IDS.some((id) => id === edge)

function checkEdges(shoot: Shoot, item: Shot | Task, pointer: string): Problem[] {
  const roast = roastOf(shoot, item.cook)
  const cook = shoot.cooks.find(({ id }) => id === roast)
  const known = [...shoot.cooks, ...(shoot.sides ?? [])]
  // A side on a cook that is not there is told at the side.
  if (!cook && sideOf(shoot, item.cook)) return []
  if (!cook) return [{ pointer: `${pointer}/cook`, sentence: unknownName(item.cook, 'cook', known) }]
  const shot: Partial<Shot> = item
  const edges: Sited[] = [
    [shot.at?.moment, `${pointer}/at/moment`],
    [shot.between?.[0], `${pointer}/between/0`],
    [shot.between?.[1], `${pointer}/between/1`],
    [item.from, `${pointer}/from`],
    [item.to, `${pointer}/to`],
  ]
  const absent = edges.flatMap(([edge, at]) =>
    isMoment(edge) && !momentsOf(cook).includes(edge) ? [{ pointer: at, sentence: absentMoment(cook, edge) }] : [],
  )
  if (absent.length > 0) return absent
  return [...backwards(edges[1], edges[2]), ...backwards(edges[3], edges[4])]
}

function absentMoment(cook: Cook, moment: MomentId): string {
  if (moment === 'turn')
    return `The plan of "${cook.id}" has no turn. Add "turn" to its roast, or choose another moment.`
  if (moment === 'cooker-steady')
    return `The oven of "${cook.id}" starts cold, so it is not steady before the meat is on. Choose another moment.`
  if (cook.stages.some((stage) => stage.do === 'sear'))
    return `No vents are opened in the ${cook.cooker.kind} of "${cook.id}". Choose another moment, such as "sear-start".`
  return `The plan of "${cook.id}" has no sear, so there is no "${moment}". Add a sear, or choose another moment.`
}

/** The chain in which moments follow each other in every cook; turn and carryover-peak stand beside it. */
const CHAIN: readonly string[] = MOMENT_IDS.filter((id) => id !== 'turn' && id !== 'carryover-peak')
function backwards(first?: Sited, last?: Sited): Problem[] {
  const [from, to, at] = [first?.[0], last?.[0], last?.[1]]
  if (from === undefined || to === undefined || at === undefined) return []
  if (from === to) return [{ pointer: at, sentence: `This begins and ends at ${quoted(from)}. Write a later end.` }]
  const [i, j] = [CHAIN.indexOf(from), CHAIN.indexOf(to)]
  if (i < 0 || j < 0 || i < j) return []
  return [{ pointer: at, sentence: `"${to}" comes before "${from}" in every cook. Change the two round.` }]
}

const unknownName = (written: string | undefined, what: string, known: readonly { readonly id: string }[]) => {
  const ids = known.map(({ id }) => id)
  const meant = nearest(written ?? '', ids)
  return `There is no ${what} ${quoted(written)}. ${
    meant
      ? `Did you mean "${meant}"?`
      : ids.length > 0
        ? `There is ${listed(
            ids.map((id) => `"${id}"`),
            'and',
          )}.`
        : `Add it to the ${what}s.`
  }`
}

function checkNeeds(shoot: Shoot, item: Shot | Task, pointer: string): Problem[] {
  const people = shoot.people ?? []
  if (people.length === 0) return []
  const known = [...new Set(people.flatMap(({ id, roles }) => [id, ...roles]))]
  return (item.needs ?? []).flatMap((need, i) => {
    if (known.includes(need)) return []
    const meant = nearest(need, known)
    const right = meant
      ? `Did you mean "${meant}"?`
      : `Give somebody the role, or write ${listed(known.slice(0, 8).map((each) => `"${each}"`))}.`
    return [{ pointer: `${pointer}/needs/${i}`, sentence: `Nobody here is ${quoted(need)}. ${right}` }]
  })
}

function checkCamera(shoot: Shoot, shot: Shot, pointer: string): Problem[] {
  const cameras = shoot.cameras ?? []
  if (shot.camera === undefined || cameras.length === 0 || cameras.some(({ id }) => id === shot.camera)) return []
  return [{ pointer: `${pointer}/camera`, sentence: unknownName(shot.camera, 'camera', cameras) }]
}

function checkAfter(shots: readonly Shot[]): Problem[] {
  const byId = new Map(shots.map((shot) => [shot.id, shot]))
  const unknown = shots.flatMap((shot, i) =>
    (shot.after ?? []).flatMap((id, j) =>
      byId.has(id) ? [] : [{ pointer: `/shots/${i}/after/${j}`, sentence: unknownName(id, 'shot', shots) }],
    ),
  )
  if (unknown.length > 0) return unknown
  const leadsBack = (from: Shot, goal: string, seen: Set<string>): boolean =>
    (from.after ?? []).some((id) => {
      if (id === goal) return true
      if (seen.has(id)) return false
      seen.add(id)
      const next = byId.get(id)
      return next !== undefined && leadsBack(next, goal, seen)
    })
  return shots.flatMap((shot, i) =>
    leadsBack(shot, shot.id, new Set())
      ? [
          {
            pointer: `/shots/${i}/after`,
            sentence: `"${shot.id}" would have to stand after itself, by way of ${listed(
              (shot.after ?? []).map((id) => `"${id}"`),
              'and',
            )}. Take one "after" out.`,
          },
        ]
      : [],
  )
}
