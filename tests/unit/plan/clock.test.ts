import { describe, expect, test } from 'vitest'
import {
  formatClock,
  formatDate,
  formatDay,
  fromIso,
  knownZone,
  skippedTo,
  toInstant,
  toIso,
} from '../../../lib/plan/clock'
import { instant } from '../../../lib/units'

const day = (date: string, call?: string, zone = 'Europe/Dublin') => ({ date, zone, day: { call } })
const iso = (shoot: ReturnType<typeof day>, clock: string) => toIso(toInstant(shoot, clock), shoot.zone)

describe('toInstant: clock times through the date and zone', () => {
  test('a time of the day itself', () =>
    expect(iso(day('2027-05-15', '14:00'), '18:30')).toBe('2027-05-15T18:30+01:00'))
  test('a wrap earlier than the call is the next day', () =>
    expect(iso(day('2027-05-15', '14:00'), '01:30')).toBe('2027-05-16T01:30+01:00'))
  test('without a call every time is of the date', () =>
    expect(iso(day('2027-05-15'), '01:30')).toBe('2027-05-15T01:30+01:00'))
  test('the first at or after another instant', () => {
    const shoot = day('2027-05-15')
    const after = toInstant(shoot, '20:00')
    expect(toIso(toInstant(shoot, '20:00', after), shoot.zone)).toBe('2027-05-15T20:00+01:00')
    expect(toIso(toInstant(shoot, '19:59', after), shoot.zone)).toBe('2027-05-16T19:59+01:00')
  })
  test('Europe/Dublin 2027-10-31 01:30 occurs twice: the first is meant', () => {
    expect(iso(day('2027-10-31'), '01:30')).toBe('2027-10-31T01:30+01:00')
    expect(skippedTo(day('2027-10-31'), '01:30')).toBeNull()
    const [first, second] = [fromIso('2027-10-31T01:30+01:00'), fromIso('2027-10-31T01:30+00:00')]
    expect(second - first).toBe(3_600_000)
    expect([formatClock(first, 'Europe/Dublin'), formatClock(second, 'Europe/Dublin')]).toEqual(['01:30', '01:30'])
  })
  test('Europe/Dublin 2027-03-28 01:30 is skipped, to 02:30', () => {
    expect(skippedTo(day('2027-03-28'), '01:30')).toBe('02:30')
    expect(skippedTo(day('2027-03-27', '20:00'), '01:30')).toBe('02:30')
    expect(skippedTo(day('2027-03-28', '20:00'), '01:30')).toBeNull()
    expect(skippedTo(day('2027-03-28'), '02:00')).toBeNull()
  })
  test('a night across the change is an hour shorter or longer than its clock times', () => {
    const hours = (date: string) =>
      (toInstant(day(date, '20:00'), '06:00') - toInstant(day(date, '20:00'), '20:00')) / 3_600_000
    expect([hours('2027-03-27'), hours('2027-05-15'), hours('2027-10-30')]).toEqual([9, 10, 11])
  })
  test('half-hour zones and changes by half an hour', () => {
    expect(iso(day('2027-05-15', '14:00', 'Asia/Kolkata'), '18:30')).toBe('2027-05-15T18:30+05:30')
    expect(skippedTo(day('2027-10-03', undefined, 'Australia/Lord_Howe'), '02:15')).toBe('02:45')
  })
})

describe('times as they leave the core', () => {
  test('toIso: seconds only where there are any, offset of the day', () => {
    expect(toIso(fromIso('2027-01-15T12:00:30Z'), 'Europe/Dublin')).toBe('2027-01-15T12:00:30+00:00')
    expect(toIso(instant(fromIso('2027-01-15T12:00:00Z') + 400), 'America/New_York')).toBe('2027-01-15T07:00-05:00')
  })
  test('formatClock rounds to the nearest minute', () => {
    expect(formatClock(fromIso('2027-05-15T17:29:31Z'), 'Europe/Dublin')).toBe('18:30')
    expect(formatClock(fromIso('2027-05-15T22:59:40Z'), 'Europe/Dublin')).toBe('00:00')
  })
  test('days in words', () => {
    expect(formatDate(day('2027-05-15'))).toBe('Saturday 15 May 2027')
    expect(formatDay(fromIso('2027-05-15T23:30:00Z'), 'Europe/Dublin')).toBe('Sunday 16 May 2027')
  })
  test.each([
    ['Europe/Dublin', true],
    ['europe/dublin', true],
    ['UTC', true],
    ['Asia/Calcutta', true],
    ['Europe/Atlantis', false],
    ['+01:00', false],
    ['', false],
  ])('zone %s known: %s', (zone, known) => expect(knownZone(zone) !== null).toBe(known))
})
