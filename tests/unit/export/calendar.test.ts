import * as fc from 'fast-check'
import ICAL from 'ical.js'
import { describe, expect, test } from 'vitest'
import type { Layout } from '../../../lib/day/layout'
import { type CalendarInput, calendarOf, type FormerEvent, formerNames } from '../../../lib/export/calendar'
import { eventsOf } from '../../../lib/export/calendar-events'
import { folded, textValue } from '../../../lib/export/calendar-lines'
import type { Sheet } from '../../../lib/export/call-words'
import type { Shoot } from '../../../lib/plan/shoot'
import { instant } from '../../../lib/units'
import { lambLayout, lambShoot } from './synthetic'

const sheetOf = (change: Partial<Sheet> = {}): Sheet => ({
  shoot: lambShoot(),
  layout: lambLayout(),
  units: 'metric',
  ...change,
})
const SAVED = instant(Date.parse('2027-05-14T18:40:00+01:00'))
const feed = (change: Partial<CalendarInput> = {}) =>
  calendarOf({ shootId: '01JABC', sheet: sheetOf(), revision: 3, saved: SAVED, ...change })

/** Read by a parser that refuses what is not to the letter. */
function read(text: string) {
  ICAL.design.strict = true
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[])
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component)
    const value = (name: string) => String(component.getFirstPropertyValue(name) ?? '')
    return {
      uid: event.uid,
      title: event.summary,
      notes: event.description ?? '',
      place: event.location ?? '',
      start: event.startDate.toJSDate().getTime(),
      end: event.endDate.toJSDate().getTime(),
      zone: event.startDate.zone.tzid,
      sequence: event.sequence,
      stamp: value('dtstamp'),
      modified: value('last-modified'),
      status: value('status'),
      alarms: component.getAllSubcomponents('valarm').map((alarm) => ({
        action: String(alarm.getFirstPropertyValue('action')),
        words: String(alarm.getFirstPropertyValue('description')),
        beforeS: -(alarm.getFirstPropertyValue('trigger') as ICAL.Duration).toSeconds(),
      })),
    }
  })
}
type Read = ReturnType<typeof read>[number]
const byUid = (events: readonly Read[]) => new Map(events.map((event) => [event.uid, event]))
const at = (clock: string) => Date.parse(`2027-05-15T${clock}:00+01:00`)

describe('the calendar of a shoot', () => {
  const events = read(feed())
  const found = byUid(events)

  test('has an entry for the call, each shot, each task, each meal and the wrap, and no UID twice', () => {
    const layout = lambLayout()
    expect(events).toHaveLength(layout.shots.length + layout.tasks.length + layout.meals.length + 2)
    expect(found.size).toBe(events.length)
  })
  test('a shot runs from its standby to its end, in UTC', () => {
    expect(found.get('shot-sear@01JABC.emberslate')).toMatchObject({
      title: '13 Sear',
      start: at('19:52'),
      end: at('20:03'),
      zone: 'UTC',
      status: 'TENTATIVE',
    })
    expect(found.get('shot-on@01JABC.emberslate')).toMatchObject({ start: at('17:04'), status: 'CONFIRMED' })
  })
  test('what calls live is in the notes, with its window', () => {
    const { notes } = found.get('shot-probe@01JABC.emberslate') as Read
    expect(notes).toContain('Early to late: 19:16 to 20:21')
    expect(notes).toContain('Called live: when the probe reads 43 °C')
  })
  test('alarms come 15 min before a standby, and before the earliest one where the call is live', () => {
    expect(found.get('shot-on@01JABC.emberslate')?.alarms).toEqual([
      { action: 'DISPLAY', words: 'Stand by in 15 min: 5 Meat on the grate', beforeS: 900 },
    ])
    expect(found.get('shot-probe@01JABC.emberslate')?.alarms.map(({ beforeS }) => beforeS)).toEqual([
      900 + 29 * 60,
      900,
    ])
  })
  test('version and time of saving are in every entry', () => {
    for (const event of events)
      expect([event.sequence, event.stamp, event.modified]).toEqual([3, '2027-05-14T17:40:00Z', '2027-05-14T17:40:00Z'])
  })
  test('it reads back as what went in', () => {
    const went = eventsOf(sheetOf())
    expect(events.map(({ title, notes, place, start, end }) => ({ title, notes, place, start, end }))).toEqual(
      went.map(({ title, notes, place, start, end }) => ({ title, notes, place, start, end })),
    )
  })
  test('parsed and written again by the parser it is the same calendar', () => {
    const again = ICAL.stringify(ICAL.parse(feed()) as unknown as Parameters<typeof ICAL.stringify>[0])
    expect(read(again)).toEqual(events)
  })
})

describe('the calendar of one person', () => {
  const events = read(feed({ person: 'cam-2' }))
  test('begins with their own call and holds what they are needed for', () => {
    const layout = lambLayout()
    expect(events[0]).toMatchObject({ uid: 'call.cam-2@01JABC.emberslate', start: at('15:35') })
    const shots = layout.shots.filter(({ people }) => people.includes('cam-2')).length
    expect(events).toHaveLength(shots + 3)
  })
})

describe('a changed day', () => {
  const moved = (layout: Layout): Layout => ({
    ...layout,
    shots: layout.shots.map((shot) => (shot.id === 'mint' ? { ...shot, setupStart: shot.start } : shot)),
  })
  const withoutMint = (layout: Layout): Layout => ({
    ...layout,
    shots: layout.shots.filter(({ id }) => id !== 'mint'),
  })
  test('keeps the UID of what moved and counts up', () => {
    const [before, after] = [feed(), feed({ revision: 4, sheet: sheetOf({ layout: moved(lambLayout()) }) })].map((t) =>
      byUid(read(t)),
    )
    expect([...(after?.keys() ?? [])].sort()).toEqual([...(before?.keys() ?? [])].sort())
    const mint = 'shot-mint@01JABC.emberslate'
    expect(after?.get(mint)?.start).toBe(at('17:28'))
    expect(after?.get(mint)?.sequence).toBe(4)
  })
  test('cancels what is gone, at its former time where that is known', () => {
    const former: FormerEvent[] = eventsOf(sheetOf())
    const gone = read(feed({ revision: 4, former, sheet: sheetOf({ layout: withoutMint(lambLayout()) }) })).filter(
      ({ status }) => status === 'CANCELLED',
    )
    expect(gone).toHaveLength(1)
    expect(gone[0]).toMatchObject({ title: '6 Mint sauce', start: at('17:24'), sequence: 4, alarms: [] })
  })
  test('cancels a shot known by an earlier document alone, at the call', () => {
    const former = formerNames({
      shots: [...(lambShoot().shots ?? []), { id: 'dog', title: 'The dog', free: true, needs: ['stylist'] }],
      people: lambShoot().people,
    })
    const gone = read(feed({ former })).filter(({ status }) => status === 'CANCELLED')
    // The dropped smoke was never on the calendar of this layout either.
    expect(gone.map(({ title, start }) => [title, start])).toEqual([
      ['Vent smoke, long lens', at('15:00')],
      ['The dog', at('15:00')],
    ])
  })
  test('on a person’s calendar only what could have been theirs is cancelled', () => {
    const shots = [{ id: 'dog', title: 'The dog', free: true, needs: ['stylist'] }]
    const names = (person: string) => formerNames({ shots, people: lambShoot().people }, person)
    expect([names('stylist').length, names('cam-1').length]).toEqual([1, 0])
  })
})

describe('a night on which the clocks change', () => {
  test('an entry over the change lasts as long as it does, whatever the clocks say', () => {
    const layout: Layout = {
      ...lambLayout(),
      tasks: [
        { id: 'fire-watch', start: '2027-10-31T00:30+01:00', end: '2027-10-31T01:30+00:00', people: ['presenter'] },
      ],
    }
    const watch = read(feed({ sheet: sheetOf({ layout }) })).find(({ uid }) => uid.startsWith('task-')) as Read
    expect(watch.end - watch.start).toBe(2 * 3_600_000)
    expect(feed({ sheet: sheetOf({ layout }) })).toContain('DTSTART:20271030T233000Z\r\nDTEND:20271031T013000Z')
  })
})

const octets = (text: string) => new TextEncoder().encode(text).length
const said = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 200 }),
  fc.string({
    unit: fc.constantFrom('é', 'ß', '🔥', '👩‍🍳', ',', ';', '\\', '\n', '\r\n', 'n', ' ', ':', '"', 'Ő'),
    maxLength: 160,
  }),
)
/** What a text value may hold at all: no control characters but the line end and the tab, no half characters. */
const sayable = (text: string) => text.replace(/\r\n?/g, '\n').replace(/(?![\n\t])[\p{Cc}\p{Cs}]/gu, '')

describe('lines', () => {
  test('no line is longer than 75 octets or cut within a character, and unfolding gives it back', () => {
    fc.assert(
      fc.property(
        said.map((text) => `SUMMARY:${textValue(text)}`),
        (line) => {
          const pieces = folded(line).split('\r\n')
          for (const piece of pieces) {
            expect(octets(piece)).toBeLessThanOrEqual(75)
            expect(piece).not.toMatch(/\p{Surrogate}/u)
          }
          expect(pieces.join('\r\n').replaceAll('\r\n ', '')).toBe(line)
        },
      ),
      { seed: 4, numRuns: 300 },
    )
  })
  test('a line of exactly 75 octets stays whole, one more is folded', () => {
    expect(folded('x'.repeat(75))).toBe('x'.repeat(75))
    expect(folded('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x`)
  })
  test('titles with accents, emoji, commas and line ends come back as they were', () => {
    fc.assert(
      fc.property(said, said, (title, name) => {
        const shoot: Shoot = {
          ...lambShoot(),
          title: `A${name}`,
          shots: lambShoot().shots?.map((shot) =>
            shot.id === 'wall' ? { ...shot, title: `W${title}.`, place: name } : shot,
          ),
        }
        const text = feed({ sheet: sheetOf({ shoot }) })
        for (const line of text.split('\r\n')) expect(octets(line)).toBeLessThanOrEqual(75)
        const wall = byUid(read(text)).get('shot-wall@01JABC.emberslate')
        expect(wall?.title).toBe(`1 W${sayable(title)}.`)
        expect(read(text)[0]?.title).toBe(`Call: A${sayable(name)}`)
      }),
      { seed: 5, numRuns: 25 },
    )
  })
})
