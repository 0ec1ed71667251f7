import type { Call, Layout } from '../day/layout'
import type { Forecast } from '../model/forecast'
import { formatClock, formatDate, formatDay, fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { tasksOf } from '../plan/side-tasks'
import type { Instant, UnitSystem } from '../units'
import {
  callWindow,
  clockOf,
  isLive,
  nameOf,
  namesOf,
  roleWords,
  type Sheet,
  triggerWords,
  whoWords,
} from './call-words'
import type { Drawing } from './drawing'
import { drawHeatLine, type HeatLineInput } from './heat-line'
import { ownCallAt } from './own-call'
import { fireStands, kitWords, lightWords, placeWords, weatherWords, wrapWords } from './sheet-facts'
import { shotNumbers } from './shot-numbers'
import { type Slip, slipOf } from './slips'

export interface CallSheetInput {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly forecasts: ReadonlyMap<string, Forecast>
  readonly units: UnitSystem
  /** Which state of the plan this sheet shows, and when its forecast was made. */
  readonly stamp: {
    readonly revision: number
    readonly saved: Instant | null
    readonly forecast: Instant | null
    /** When the crew was last sent a re-plan. */
    readonly rePlanned?: Instant | null
  }
  readonly cautions: readonly string[]
  readonly minimum?: HeatLineInput['minimum']
}
export interface CallRow {
  readonly likely: string
  readonly moment: string
  readonly shot: string
  readonly window: string
  readonly standby: string
  readonly trigger: string
  readonly who: string
}
/** A shot that can be had again, in the gaps between the calls. */
export interface GapRow {
  readonly time: string
  readonly shot: string
  readonly who: string
  readonly place: string
}
/** What the producer fills in; null prints as a line to write on. */
export interface ProducerWords {
  readonly emergency: string | null
  readonly hospital: string | null
  readonly allergens: string | null
  readonly contacts: readonly string[]
  readonly parking: string | null
  readonly notes: string | null
}
export interface CallSheetModel {
  readonly title: string
  readonly day: string
  readonly revision: string
  readonly forecast: string
  readonly crewCall: string
  readonly place: string
  readonly light: string
  readonly fire: string
  readonly producer: ProducerWords
  readonly heatLine: Drawing
  readonly calls: readonly CallRow[]
  readonly own: readonly {
    readonly name: string
    readonly does: string
    readonly call: string
    readonly first: string
  }[]
  readonly gaps: readonly GapRow[]
  readonly dropped: readonly string[]
  readonly meals: string
  readonly wrap: string
  readonly watch: readonly string[]
  readonly kit: string
  readonly care: readonly string[]
  readonly foot: readonly [string, string]
  readonly slips: readonly Slip[]
}

/** The call sheet as values: what paper and page both print. */
export function callSheetOf(input: CallSheetInput): CallSheetModel {
  const { shoot, layout } = input
  const sheet: Sheet = input
  return {
    title: shoot.title,
    day: formatDate(shoot),
    ...stampWords(input),
    crewCall: clockOf(sheet, layout.crewCall),
    place: placeWords(shoot),
    light: [lightWords(sheet), weatherWords(sheet)].filter(Boolean).join(' '),
    fire: fireStands(shoot),
    producer: producerWords(shoot),
    heatLine: sheetHeatLine(input),
    calls: callRows(sheet),
    own: (shoot.people ?? []).map((person) => ownCall(sheet, person.id)),
    gaps: gapRows(sheet),
    dropped: layout.dropped.map((d) => `${titled(shoot, d.id)}: ${d.why} ${d.wouldSave}`.trim()),
    meals: mealWords(sheet),
    wrap: wrapWords(sheet),
    watch: taskLines(sheet),
    kit: kitWords(shoot),
    care: input.cautions,
    foot: [
      'Stand by when the probe reads it, whatever the clock says.',
      'In nine cooks of ten a moment lies between early and late.',
    ],
    slips: (shoot.people ?? []).map((person) => slipOf(sheet, person.id)),
  }
}

function stampWords({ shoot, stamp }: CallSheetInput): Pick<CallSheetModel, 'revision' | 'forecast'> {
  const when = (at: Instant) =>
    `${formatDay(at, shoot.zone).split(' ').slice(1, 3).join(' ')} ${formatClock(at, shoot.zone)}`
  const saved = stamp.saved === null ? '' : `, ${when(stamp.saved)}`
  return {
    revision: `Revision ${stamp.revision}${stamp.rePlanned ? `, re-planned ${when(stamp.rePlanned)}` : saved}`,
    forecast: stamp.forecast === null ? '' : `forecast of ${when(stamp.forecast)}`,
  }
}

function producerWords({ callSheet = {} }: Shoot): ProducerWords {
  const { emergency, hospital, allergens, contacts, parking, notes } = callSheet
  return {
    emergency: emergency ?? null,
    hospital: hospital ?? null,
    allergens: allergens ?? null,
    contacts: (contacts ?? []).map(({ name, role, phone }) => `${name}${role ? `, ${role}` : ''}: ${phone}`),
    parking: parking ?? null,
    notes: notes ?? null,
  }
}

function sheetHeatLine(input: CallSheetInput): Drawing {
  const { shoot, layout } = input
  const cooks = shoot.cooks.flatMap((cook) => {
    const forecast = input.forecasts.get(cook.id)
    const meatOn = fromIso(layout.meatOn[cook.id] ?? layout.start)
    return forecast ? [{ forecast, meatOn, title: cook.id }] : []
  })
  return drawHeatLine({
    zone: shoot.zone,
    place: shoot.place,
    title: `Heat line of ${shoot.title}`,
    cooks,
    layout,
    shoot,
    minimum: input.minimum,
    width: 706,
    units: input.units,
    lanes: false,
    standing: false,
    low: 'compact',
  })
}

/** Calls for moments, by their likely time; those that may never come last. */
function callRows(sheet: Sheet): CallRow[] {
  const once = sheet.layout.calls.filter((call) => call.moment !== null)
  const at = (call: Call) => (call.window.likely ? fromIso(call.window.likely) : Number.POSITIVE_INFINITY)
  return [...once].sort((a, b) => at(a) - at(b)).map((call) => callRow(sheet, call))
}
function callRow(sheet: Sheet, call: Call): CallRow {
  const placed = sheet.layout.shots.find((shot) => shot.id === call.for)
  return {
    likely: clockOf(sheet, call.window.likely),
    moment: nameOf(sheet, call.moment, call.cook),
    shot: titled(sheet.shoot, call.for),
    window: callWindow(sheet, call),
    standby: isLive(call) ? 'called live' : clockOf(sheet, call.standby),
    trigger: triggerWords(sheet, call),
    who: whoWords(sheet, placed ?? { people: call.people, camera: [] }),
  }
}

/** "11 Probe at 46 °C, close". */
function titled(shoot: Shoot, id: string): string {
  const title = shoot.shots?.find((shot) => shot.id === id)?.title ?? id
  const number = shotNumbers(shoot).get(id)
  return number === undefined ? title : `${number} ${title}`
}

function ownCall(sheet: Sheet, person: string): CallSheetModel['own'][number] {
  const first = sheet.layout.shots
    .filter((shot) => shot.people.includes(person))
    .map((shot) => shot.setupStart)
    .sort()[0]
  return {
    name: namesOf(sheet, [person]),
    does: roleWords(sheet, person).does,
    call: formatClock(ownCallAt(sheet.layout, person), sheet.shoot.zone),
    first: first === undefined ? '' : clockOf(sheet, first),
  }
}

function gapRows(sheet: Sheet): GapRow[] {
  const once = new Set(sheet.layout.calls.filter((call) => call.moment !== null).map((call) => call.for))
  return sheet.layout.shots
    .filter((shot) => !once.has(shot.id))
    .sort((a, b) => fromIso(a.start) - fromIso(b.start))
    .map((placed) => ({
      time: clockOf(sheet, placed.start),
      shot: titled(sheet.shoot, placed.id),
      who: whoWords(sheet, placed),
      place: sheet.shoot.shots?.find(({ id }) => id === placed.id)?.place ?? '',
    }))
}

/** "Meal 18:27 to 18:57, all." */
function mealWords(sheet: Sheet): string {
  const { meals } = sheet.layout
  const times = [...new Set(meals.map((meal) => `${meal.start} ${meal.end}`))]
  return times
    .map((time) => {
      const together = meals.filter((meal) => `${meal.start} ${meal.end}` === time)
      const eaters = together.flatMap((meal) => meal.people)
      const everybody = (sheet.shoot.people ?? []).every((person) => eaters.includes(person.id))
      const who = everybody ? 'all' : namesOf(sheet, eaters)
      return `${clockOf(sheet, together[0]?.start ?? null)} to ${clockOf(sheet, together[0]?.end ?? null)}, ${who}`
    })
    .join('; ')
}

/** A line for each shift; what comes again and again is one line for whoever does it, with its times. */
function taskLines(sheet: Sheet): string[] {
  const lines = new Map<string, { readonly words: string; readonly times: string[] }>()
  sheet.layout.tasks.forEach((task, i) => {
    const asked = tasksOf(sheet.shoot).find((t) => t.id === task.id)
    const again = asked?.every !== undefined
    const key = again ? `${task.id} ${task.people.join()}` : `${i}`
    const who = task.people.length > 0 ? namesOf(sheet, task.people) : 'nobody is free'
    const line = lines.get(key) ?? { words: `${asked?.title ?? task.id}: ${who}`, times: [] }
    const start = clockOf(sheet, task.start)
    line.times.push(again ? start : `${start} to ${clockOf(sheet, task.end)}`)
    lines.set(key, line)
  })
  return [...lines.values()].map(({ words, times }) => `${words}, ${times.join(', ')}`)
}
