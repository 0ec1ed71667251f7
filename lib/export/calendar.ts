import { fromIso } from '../plan/clock'
import { sideTaskIds } from '../plan/side-tasks'
import type { Instant } from '../units'
import { type CalendarEvent, eventsOf, shotName, taskName } from './calendar-events'
import { folded, textValue, utcValue } from './calendar-lines'
import type { Sheet } from './call-words'

/** What an earlier version of the shoot had on somebody's calendar. */
export type FormerEvent = Pick<CalendarEvent, 'name' | 'title' | 'kind'> & Partial<Pick<CalendarEvent, 'start' | 'end'>>

export interface CalendarInput {
  readonly shootId: string
  readonly sheet: Sheet
  /** Higher with each save and each re-plan that was sent, so that readers know which is newer. */
  readonly revision: number
  readonly saved: Instant
  /** One person's calendar; the whole shoot's where nobody is named. */
  readonly person?: string
  /** Whatever of these is no longer on the calendar is cancelled there. */
  readonly former?: readonly FormerEvent[]
}

/** The calendar as iCalendar text [rfc-5545]. The same entry keeps its UID from version to version and is updated in place. */
export function calendarOf(input: CalendarInput): string {
  const { sheet, person } = input
  const events = eventsOf(sheet, person)
  const who = sheet.shoot.people?.find(({ id }) => id === person)
  const name = person === undefined ? sheet.shoot.title : `${sheet.shoot.title}: ${who?.name ?? person}`
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Emberslate//Calls//EN',
    'CALSCALE:GREGORIAN',
    // [rfc-7986] 5.1 and 5.7; the X- forms are what readers older than it look for.
    `NAME:${textValue(name)}`,
    `X-WR-CALNAME:${textValue(name)}`,
    'REFRESH-INTERVAL;VALUE=DURATION:PT5M',
    'X-PUBLISHED-TTL:PT5M',
    ...[...events, ...cancelled(input, events)].flatMap((event) => eventLines(input, event)),
    'END:VCALENDAR',
  ]
  return lines.map((line) => `${folded(line)}\r\n`).join('')
}

/** What was announced once and is gone; without a known time it stands at the call, since every entry must have one. */
function cancelled({ sheet, former = [] }: CalendarInput, events: readonly CalendarEvent[]): CalendarEvent[] {
  const known = new Set(events.map(({ name }) => name))
  const call = fromIso(sheet.layout.crewCall)
  return former.flatMap(({ name, title, kind, start = call, end = start }) => {
    if (known.has(name)) return []
    known.add(name)
    return [{ name, title, kind, start, end, place: '', notes: '', status: 'CANCELLED' as const, alarms: [] }]
  })
}

function eventLines(input: CalendarInput, event: CalendarEvent): string[] {
  const stamp = utcValue(input.saved)
  const owner = input.person === undefined ? '' : `.${input.person}`
  const { place } = input.sheet.shoot
  return [
    'BEGIN:VEVENT',
    `UID:${textValue(`${event.name}${owner}@${input.shootId}.emberslate`)}`,
    `SEQUENCE:${input.revision}`,
    `DTSTAMP:${stamp}`,
    `LAST-MODIFIED:${stamp}`,
    `DTSTART:${utcValue(event.start)}`,
    ...(event.end > event.start ? [`DTEND:${utcValue(event.end)}`] : []),
    `SUMMARY:${textValue(event.title)}`,
    ...(event.place
      ? [`LOCATION:${textValue(event.place)}`, `GEO:${place.lat.toFixed(6)};${place.lon.toFixed(6)}`]
      : []),
    ...(event.notes ? [`DESCRIPTION:${textValue(event.notes)}`] : []),
    `CATEGORIES:${event.kind.toUpperCase()}`,
    `STATUS:${event.status}`,
    // Somebody in sight of the fire can still be asked; who is called cannot.
    `TRANSP:${event.kind === 'task' || event.status === 'CANCELLED' ? 'TRANSPARENT' : 'OPAQUE'}`,
    ...event.alarms.flatMap((alarm) => [
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      `DESCRIPTION:${textValue(alarm.words)}`,
      `TRIGGER:-PT${Math.round(alarm.before / 60)}M`,
      'END:VALARM',
    ]),
    'END:VEVENT',
  ]
}

type Named = { readonly id: string; readonly title: string; readonly needs?: readonly string[] }
/** As much of an earlier document as says what was on the calendar; a shoot is one, and so is a document as saved. */
export interface NamedEntries {
  readonly shots?: readonly Named[]
  readonly tasks?: readonly Named[]
  readonly sides?: readonly Named[]
  readonly people?: readonly { readonly id: string; readonly roles: readonly string[] }[]
}

/** Shots and tasks of an earlier document that would have been on this calendar, their times no longer known. */
export function formerNames(
  { shots = [], tasks = [], sides = [], people = [] }: NamedEntries,
  person?: string,
): FormerEvent[] {
  const roles = people.find(({ id }) => id === person)?.roles ?? []
  const theirs = ({ needs = ['camera'] }: Named) =>
    person === undefined || needs.some((need) => need === person || roles.includes(need))
  return [
    ...shots.filter(theirs).map(({ id, title }) => ({ name: shotName(id), title, kind: 'shot' as const })),
    ...tasks.filter(theirs).map(({ id, title }) => ({ name: taskName(id), title, kind: 'task' as const })),
    // Who would have handled a side, a cook where nobody is named.
    ...sides
      .filter(({ needs = ['cook'], ...side }) => theirs({ ...side, needs }))
      .flatMap((side) =>
        Object.values(sideTaskIds(side)).map((id) => ({
          name: taskName(id),
          title: side.title,
          kind: 'task' as const,
        })),
      ),
  ]
}
