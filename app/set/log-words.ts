import type { Entry } from '@/lib/log/entry'
import { celsius, formatDuration, formatMass, formatTemp, type UnitSystem } from '@/lib/units'

/** What a line of the slate log says, in the crew's words. */
export interface LogNames {
  readonly units: UnitSystem
  readonly shot: (id: string) => string
  readonly moment: (cook: string, moment: string) => string
  readonly person: (id: string) => string
  /** Where there is only one roast, nobody names it. */
  readonly cook: (id: string) => string
}

const FOUND = {
  in: 'in',
  moved: 'moved',
  'pulled-out': 'pulled out',
  wrong: 'reads wrong',
  right: 'right again',
  checked: 'checked',
} as const
const DID = {
  fed: 'fire fed',
  'vents-open': 'vents open',
  'vents-shut': 'vents shut',
  'lid-open': 'lid open',
  'lid-shut': 'lid shut',
} as const
const ANSWERS = { coming: 'coming', ready: 'ready', cannot: 'cannot come', 'hand-over': 'hands over' } as const
const plain = (word: string) => word.replaceAll('-', ' ')

export function logWords(entry: Entry, names: LogNames): string {
  switch (entry.kind) {
    case 'reading':
      return `${names.cook(entry.cook)}${plain(entry.sensor)} ${formatTemp(celsius(entry.temp), names.units, 1)}`
    case 'mark':
      return `${names.cook(entry.cook)}${names.moment(entry.cook, entry.moment)}`
    case 'call-answer':
      return `${ANSWERS[entry.answer]}${entry.to ? ` to ${names.person(entry.to)}` : ''}: ${callWords(entry.call, names)}`
    case 'take':
      return takeWords(entry, names)
    case 'note':
      return `“${entry.text}”${entry.shot ? `, ${names.shot(entry.shot)}` : ''}${entry.state ? `, ${entry.state}` : ''}`
    case 'shot-state':
      return `${names.shot(entry.shot)}: ${entry.state === 'standby' ? 'still to do' : entry.state}${entry.why ? `, ${entry.why}` : ''}`
    case 'late':
      return `${entry.who ? names.person(entry.who) : 'whole crew'} late by ${formatDuration(entry.for)}`
    case 'correction':
      return correctionWords(entry)
    default:
      return otherWords(entry, names)
  }
}

type Other = Exclude<
  Entry,
  { kind: 'reading' | 'mark' | 'call-answer' | 'take' | 'note' | 'shot-state' | 'late' | 'correction' }
>
function otherWords(entry: Other, names: LogNames): string {
  switch (entry.kind) {
    case 'probe-check':
      return `${names.cook(entry.cook)}probe ${plain(entry.sensor)} ${FOUND[entry.found]}`
    case 'fire':
      return `${names.cook(entry.cook)}${DID[entry.did]}${entry.fuel ? `, ${formatMass(entry.fuel, names.units)}` : ''}`
    case 'food':
      return `${names.cook(entry.cook)}food ${entry.is === 'out' ? 'stands out' : entry.is}`
    case 'hold-start':
      return `${names.cook(entry.cook)}held in the ${entry.in}`
    case 'hold-end':
      return `${names.cook(entry.cook)}hold ends`
    case 'meal':
      return `meal ${entry.is}`
    case 'camera-clock':
      return `camera ${entry.camera} shows ${entry.timecode}`
    case 'plan-change':
    case 'what-if-adopted':
      return entry.what
  }
}

/** Alerts whose name on screen is not that of a moment. */
const ALERTS: Readonly<Record<string, string>> = { unanswered: 'people to be fetched', meal: 'meal break' }
function callWords(call: string, names: LogNames): string {
  if (call.startsWith('call-')) return names.shot(call.slice(5))
  const alert = call.replace(/\/.*/, '')
  return ALERTS[alert] ?? plain(alert)
}

function correctionWords({ void: gone, put, why }: Extract<Entry, { kind: 'correction' }>): string {
  const temp = typeof put?.temp === 'string' ? `, ${put.temp}` : ''
  return `${gone ? 'took an entry back' : `put an entry right${temp}`}${why ? `: ${why}` : ''}`
}

const ROLLS = { start: 'rolls', end: 'cut' } as const
function takeWords(entry: Extract<Entry, { kind: 'take' }>, names: LogNames): string {
  const what = [
    `camera ${entry.camera}`,
    entry.slate ? `slate ${entry.slate}` : '',
    `take ${entry.take}`,
    entry.roll ? ROLLS[entry.roll] : '',
    entry.verdict ? plain(entry.verdict) : '',
    entry.timecode ?? '',
    entry.note ?? '',
  ]
  return `${entry.shot ? `${names.shot(entry.shot)}: ` : ''}${what.filter(Boolean).join(', ')}`
}
