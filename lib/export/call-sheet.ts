import type { Call, Layout, PlacedTask } from '../day/layout'
import type { Forecast } from '../model/forecast'
import { formatClock, formatDate, formatDay, fromIso } from '../plan/clock'
import { burnsSolidFuel } from '../plan/moments'
import type { Shoot } from '../plan/shoot'
import { formatTemp, type Instant, later, seconds, type UnitSystem } from '../units'
import { callWindow, clockOf, isLive, nameOf, roleWords, type Sheet, triggerWords, whoWords } from './call-words'
import type { Drawing } from './drawing'
import { drawHeatLine, type HeatLineInput } from './heat-line'
import { lightParts } from './heat-line-facts'
import { shotNumbers } from './shot-numbers'
import { type Slip, slipOf } from './slips'

export interface CallSheetInput {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly forecasts: ReadonlyMap<string, Forecast>
  readonly units: UnitSystem
  /** Which state of the plan this sheet shows, and when its forecast was made. */
  readonly stamp: { readonly revision: number; readonly saved: Instant | null; readonly forecast: Instant | null }
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
export interface CallSheetModel {
  readonly title: string
  readonly day: string
  readonly revision: string
  readonly forecast: string
  readonly crewCall: string
  readonly place: string
  readonly light: string
  readonly emergency: string
  readonly heatLine: Drawing
  readonly calls: readonly CallRow[]
  readonly own: readonly {
    readonly name: string
    readonly does: string
    readonly call: string
    readonly first: string
  }[]
  readonly free: readonly string[]
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
    light: lightWords(input),
    emergency: emergencyWords(shoot),
    heatLine: sheetHeatLine(input),
    calls: callRows(sheet),
    own: (shoot.people ?? []).map((person) => ownCall(sheet, person.id)),
    free: freeShots(sheet),
    dropped: layout.dropped.map((d) => `${titled(shoot, d.id)}: ${d.why} ${d.wouldSave}`.trim()),
    meals: mealWords(sheet),
    wrap: clockOf(sheet, layout.wrap),
    watch: layout.tasks.map((task) => taskWords(sheet, task)),
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
  return {
    revision: `Revision ${stamp.revision}${stamp.saved === null ? '' : `, ${when(stamp.saved)}`}`,
    forecast: stamp.forecast === null ? '' : `forecast of ${when(stamp.forecast)}`,
  }
}

function placeWords({ place }: Shoot): string {
  const degrees = (n: number, plus: string, minus: string) => `${Math.abs(n).toFixed(2)}° ${n < 0 ? minus : plus}`
  const point = `${degrees(place.lat, 'N', 'S')}, ${degrees(place.lon, 'E', 'W')}`
  return place.name === undefined ? point : `${place.name}; ${point}`
}

/** "sunset 21:18, golden hour from 20:26, dark 22:03. 14 °C, wind 3 m/s, humidity 65 %." */
function lightWords({ shoot, layout, units }: CallSheetInput): string {
  const call = fromIso(layout.crewCall)
  const parts = lightParts(shoot.place, call, later(call, seconds(20 * 3600)))
  const times = parts
    .filter((part) => part.start > call + 60_000 && part.name !== 'first light')
    .map(
      (part) =>
        `${part.name === 'golden hour' ? 'golden hour from' : part.name} ${formatClock(part.start, shoot.zone)}`,
    )
  const { air, wind, humidity } = shoot.weather ?? {}
  const weather = [
    air === undefined ? '' : formatTemp(air, units),
    wind === undefined
      ? ''
      : units === 'us'
        ? `wind ${Math.round(wind / 0.44704)} mph`
        : `wind ${Math.round(wind)} m/s`,
    humidity === undefined ? '' : `humidity ${Math.round(humidity * 100)} %`,
  ].filter(Boolean)
  const sentence = (words: readonly string[]) => (words.length > 0 ? `${capital(words.join(', '))}.` : '')
  return [sentence([...new Set(times)].slice(0, 3)), sentence(weather)].filter(Boolean).join(' ')
}
const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

const hasFire = (shoot: Shoot) => shoot.cooks.some((cook) => burnsSolidFuel(cook.cooker.kind))
const emergencyWords = (shoot: Shoot) =>
  hasFire(shoot) ? 'Water and a fire blanket stand by the cooker.' : 'A fire blanket hangs by the oven.'

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
    compact: true,
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
    ...roleWords(sheet, person),
    call: clockOf(sheet, sheet.layout.crewCall),
    first: first === undefined ? '' : clockOf(sheet, first),
  }
}

function freeShots(sheet: Sheet): string[] {
  const once = new Set(sheet.layout.calls.filter((call) => call.moment !== null).map((call) => call.for))
  return sheet.layout.shots
    .filter((shot) => !once.has(shot.id))
    .sort((a, b) => (a.start < b.start ? -1 : 1))
    .map((shot) => `${titled(sheet.shoot, shot.id)} ${clockOf(sheet, shot.start)}`)
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
      const who = everybody ? 'all' : eaters.join(', ')
      return `${clockOf(sheet, together[0]?.start ?? null)} to ${clockOf(sheet, together[0]?.end ?? null)}, ${who}`
    })
    .join('; ')
}

function taskWords(sheet: Sheet, task: PlacedTask): string {
  const title = sheet.shoot.tasks?.find((t) => t.id === task.id)?.title ?? task.id
  return `${title}: ${task.people.join(', ')}, ${clockOf(sheet, task.start)} to ${clockOf(sheet, task.end)}`
}

/** What the plan itself asks for; common practice, no source. */
function kitWords(shoot: Shoot): string {
  const cameras = shoot.cameras?.length ?? 0
  const sears = shoot.cooks.some((cook) => cook.stages.some((stage) => stage.do === 'sear'))
  const items = [
    cameras > 0 ? `${cameras} ${cameras === 1 ? 'camera' : 'cameras'}` : '',
    'probe and a spare',
    hasFire(shoot) ? 'charcoal with a reserve, lighter, metal bucket with a lid for the ash' : '',
    sears ? 'heat gloves, long tongs' : 'oven gloves',
    'board and carving knife',
  ]
  return `${capital(items.filter(Boolean).join(', '))}.`
}
