import type { Call, PlacedShot } from '../day/layout'
import { formatClock } from '../plan/clock'
import { tasksOf } from '../plan/side-tasks'
import { callWindow, clockOf, isLive, roleWords, type Sheet, triggerWords } from './call-words'
import { ownCallAt } from './own-call'
import { lightWords } from './sheet-facts'
import { shotNumbers } from './shot-numbers'

export interface SlipRow {
  readonly time: string
  readonly title: string
  readonly detail: string
  /** It happens once: a moment, not a shot that can be had again. */
  readonly once: boolean
}
/** One person's part of the call sheet. */
export interface Slip {
  readonly person: string
  readonly does: string
  readonly rows: readonly SlipRow[]
  readonly light: string
}
type Timed = SlipRow & { readonly at: string }

export function slipOf(sheet: Sheet, person: string): Slip {
  const { layout, shoot } = sheet
  const { name, does } = roleWords(sheet, person)
  const has = ({ people }: { readonly people: readonly string[] }) => people.includes(person)
  const tasks = layout.tasks.filter(has).map((task): Timed => {
    const title = tasksOf(shoot).find((t) => t.id === task.id)?.title ?? task.id
    return { at: task.start, ...row(sheet, task.start, `${title}, until ${clockOf(sheet, task.end)}`, '') }
  })
  const meals = layout.meals.filter(has).map((meal): Timed => {
    return { at: meal.start, ...row(sheet, meal.start, `meal, until ${clockOf(sheet, meal.end)}`, '') }
  })
  const shots = layout.shots.filter(has).map((placed) => shotRow(sheet, placed))
  const between = [...shots, ...tasks, ...meals].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
  const rows = [
    {
      ...row(sheet, layout.crewCall, 'call', [shoot.place.name, shoot.callSheet?.parking].filter(Boolean).join('. ')),
      time: formatClock(ownCallAt(layout, person), shoot.zone),
    },
    ...between.map(({ at: _, ...rest }) => rest),
    row(sheet, layout.wrap, 'wrap', ''),
  ]
  return { person: name, does, rows, light: lightWords(sheet) }
}

const row = (sheet: Sheet, iso: string, title: string, detail: string): SlipRow => ({
  time: clockOf(sheet, iso),
  title,
  detail,
  once: false,
})

function shotRow(sheet: Sheet, placed: PlacedShot): Timed {
  const { shoot, layout } = sheet
  const shot = shoot.shots?.find((s) => s.id === placed.id)
  const call = layout.calls.find((c) => c.for === placed.id && c.moment !== null)
  const cameras = placed.camera.length > 0 ? `camera ${placed.camera.join(', ')}` : ''
  const where = [cameras, shot?.place ?? ''].filter(Boolean).join(', ')
  const window = call ? callWindow(sheet, call).replaceAll(' ', NO_BREAK) : ''
  return {
    at: placed.setupStart,
    time: clockOf(sheet, call?.window.likely ?? placed.start),
    title: `${shotNumbers(shoot).get(placed.id) ?? ''} ${shot?.title ?? placed.id}`.trim(),
    detail: [where, standby(sheet, placed, call), window].filter(Boolean).join('. '),
    once: call !== undefined,
  }
}
const NO_BREAK = '\u00a0'

function standby(sheet: Sheet, placed: PlacedShot, call: Call | undefined): string {
  if (!call) return `Set up from ${clockOf(sheet, placed.setupStart)}`
  if (!isLive(call)) return `Stand by ${clockOf(sheet, call.standby ?? placed.setupStart)}`
  const words = triggerWords(sheet, call)
  return call.trigger ? `Stand by at ${words}` : `Stand by ${words.replace(/^follows/, 'straight after')}`
}
