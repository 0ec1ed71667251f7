import type { Call, PlacedShot } from '../day/layout'
import { RULES } from '../day/rules'
import { fromIso } from '../plan/clock'
import { tasksOf } from '../plan/side-tasks'
import { type Instant, minutes, type Seconds, seconds } from '../units'
import { callWindow, clockOf, isLive, nameOf, namesOf, type Sheet, triggerWords, whoWords } from './call-words'
import { isCalledLive } from './lanes'
import { ownCallAt } from './own-call'
import { shotNumbers } from './shot-numbers'

export interface Alarm {
  /** So long before the event begins. */
  readonly before: Seconds
  readonly words: string
}
/** One entry of a calendar. `name` is the same as long as the shoot has the shot, task or meal, whatever its time. */
export interface CalendarEvent {
  readonly name: string
  readonly title: string
  readonly start: Instant
  readonly end: Instant
  readonly place: string
  readonly notes: string
  readonly status: 'CONFIRMED' | 'TENTATIVE' | 'CANCELLED'
  readonly kind: 'call' | 'shot' | 'task' | 'meal' | 'wrap'
  readonly alarms: readonly Alarm[]
}

/** Everything on the calendar of the whole shoot, or of one person, by time. */
export function eventsOf(sheet: Sheet, person?: string): CalendarEvent[] {
  const { layout } = sheet
  const theirs = ({ people }: { readonly people: readonly string[] }) => person === undefined || people.includes(person)
  const events = [
    callEvent(sheet, person),
    ...layout.shots.filter(theirs).map((placed) => shotEvent(sheet, placed)),
    ...taskEvents(sheet, person),
    ...mealEvents(sheet, person),
    wrapEvent(sheet),
  ]
  return events.sort((a, b) => a.start - b.start || (a.name < b.name ? -1 : 1))
}

/** The crew leaves what it does up to so long before a standby; common practice, no source. */
const NOTICE = minutes(RULES.releaseMin)
/** Before the call of the day people still have to travel; common practice, no source. */
const TRAVEL = minutes(60)

function callEvent(sheet: Sheet, person: string | undefined): CalendarEvent {
  const { layout, shoot } = sheet
  const start = person === undefined ? fromIso(layout.crewCall) : ownCallAt(layout, person)
  const { parking } = shoot.callSheet ?? {}
  return {
    ...plainEvent('call', `Call: ${shoot.title}`, start, start),
    place: placeOf(sheet),
    notes: [timesHere(sheet), parking ? `Parking: ${parking}` : ''].filter(Boolean).join('\n'),
    alarms: [{ before: TRAVEL, words: `Call in an hour: ${shoot.title}` }],
  }
}
const timesHere = ({ shoot }: Sheet) => `Clock times in the notes are those of ${shoot.zone}.`

const wrapEvent = ({ layout }: Sheet): CalendarEvent =>
  plainEvent('wrap', 'Wrap', fromIso(layout.wrap), fromIso(layout.wrap))

function plainEvent(kind: CalendarEvent['kind'], title: string, start: Instant, end: Instant): CalendarEvent {
  return { name: kind, kind, title, start, end, place: '', notes: '', status: 'CONFIRMED', alarms: [] }
}

const placeOf = ({ shoot }: Sheet, spot?: string) => [spot, shoot.place.name].filter(Boolean).join(', ')

export const shotName = (id: string) => `shot-${id}`
export const taskName = (id: string) => `task-${id}`

function shotEvent(sheet: Sheet, placed: PlacedShot): CalendarEvent {
  const { shoot, layout } = sheet
  const shot = shoot.shots?.find(({ id }) => id === placed.id)
  const call = layout.calls.find((each) => each.for === placed.id && each.moment !== null)
  const number = shotNumbers(shoot).get(placed.id)
  const title = `${number ?? ''} ${shot?.title ?? placed.id}`.trim()
  return {
    ...plainEvent('shot', title, fromIso(placed.setupStart), fromIso(placed.end)),
    name: shotName(placed.id),
    place: placeOf(sheet, shot?.place),
    notes: shotNotes(sheet, placed, call),
    status: placed.hold === 'tentative' || isCalledLive(placed, layout) ? 'TENTATIVE' : 'CONFIRMED',
    alarms: alarmsOf(sheet, call, title),
  }
}

function shotNotes(sheet: Sheet, placed: PlacedShot, call: Call | undefined): string {
  const shot = sheet.shoot.shots?.find(({ id }) => id === placed.id)
  const window = call ? callWindow(sheet, call) : ''
  return [
    call
      ? `${nameOf(sheet, call.moment, call.cook)} about ${clockOf(sheet, call.window.likely)}`
      : `Rolls ${clockOf(sheet, placed.start)} to ${clockOf(sheet, placed.end)}`,
    window && `Early to late: ${window}`,
    call && isLive(call) ? `Called live: ${liveWords(sheet, call)}` : '',
    `With: ${whoWords(sheet, placed)}`,
    shot?.lid && shot.lid !== 'any' ? `Lid ${shot.lid}` : '',
  ]
    .filter(Boolean)
    .join('\n')
}

const liveWords = (sheet: Sheet, call: Call) =>
  call.trigger ? `when the probe reads ${triggerWords(sheet, call)}` : triggerWords(sheet, call)

/** Before the likely standby; where the probe or an earlier moment calls, before the earliest one too. */
function alarmsOf(sheet: Sheet, call: Call | undefined, title: string): Alarm[] {
  if (!call) return [{ before: minutes(5), words: `Set up in 5 min: ${title}` }]
  const standby = { before: NOTICE, words: `Stand by in ${RULES.releaseMin} min: ${title}` }
  if (!isLive(call) || call.window.early === null || call.window.likely === null) return [standby]
  const sooner = (fromIso(call.window.likely) - fromIso(call.window.early)) / 1000
  if (sooner < 60) return [standby]
  const words = `May be called from now on, ${liveWords(sheet, call)}: ${title}`
  return [{ before: seconds(NOTICE + sooner), words }, standby]
}

/** A task in shifts is one entry a shift. */
function taskEvents(sheet: Sheet, person: string | undefined): CalendarEvent[] {
  const shifts = new Map<string, number>()
  return sheet.layout.tasks.flatMap((task) => {
    const shift = (shifts.get(task.id) ?? 0) + 1
    shifts.set(task.id, shift)
    if (person !== undefined && !task.people.includes(person)) return []
    const title = tasksOf(sheet.shoot).find(({ id }) => id === task.id)?.title ?? task.id
    return [
      {
        ...plainEvent('task', title, fromIso(task.start), fromIso(task.end)),
        name: shift === 1 ? taskName(task.id) : `${taskName(task.id)}-shift-${shift}`,
        place: placeOf(sheet),
        notes: `With: ${namesOf(sheet, task.people)}`,
      },
    ]
  })
}

/** The nth meal of a person; where people eat in turns the whole shoot's calendar has one entry a turn. */
function mealEvents(sheet: Sheet, person: string | undefined): CalendarEvent[] {
  const eaten = new Map<string, number>()
  const turns = new Map<number, number>()
  const meals = [...sheet.layout.meals].sort((a, b) => fromIso(a.start) - fromIso(b.start))
  return meals.flatMap((meal) => {
    const nth = 1 + Math.max(0, ...meal.people.map((id) => eaten.get(id) ?? 0))
    for (const id of meal.people) eaten.set(id, nth)
    const turn = (turns.get(nth) ?? 0) + 1
    turns.set(nth, turn)
    if (person !== undefined && !meal.people.includes(person)) return []
    return [
      {
        ...plainEvent('meal', 'Meal', fromIso(meal.start), fromIso(meal.end)),
        name: person !== undefined || turn === 1 ? `meal-${nth}` : `meal-${nth}-turn-${turn}`,
        notes: `With: ${namesOf(sheet, meal.people)}`,
      },
    ]
  })
}
