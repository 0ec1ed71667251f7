import { describe, expect, it } from 'vitest'
import type { EntryDocument } from '../../../lib/log/entry'
import { ENTRY_ID } from '../../../lib/log/entry-id'
import { whenText } from '../../../lib/log/entry-words'
import { EMPTY_LOG, type Line, merge } from '../../../lib/log/log'
import { entryOf, type Match, matchFault, type Role, readFile } from '../../../lib/log/logger-readings'
import { guessShape, guessTime, guessUnit, tableOf } from '../../../lib/log/logger-table'
import { readEntry } from '../../../lib/log/read-entry'
import { Clocks } from '../../../lib/log/skew'
import { instant } from '../../../lib/units'

const TIME: Role = { as: 'time' }
const NONE: Role = { as: 'ignored' }
const core = (unit: 'C' | 'F' = 'C', sensor = 'core'): Role => ({ as: 'temp', cook: 'leg', sensor, unit })
const WITHIN = { from: instant(Date.parse('2027-05-12T00:00Z')), to: instant(Date.parse('2027-11-20T00:00Z')) }
const match = (roles: readonly Role[], more: Partial<Match> = {}): Match => ({
  roles,
  form: 'date-time',
  order: 'dmy',
  decimal: '.',
  zone: 'Europe/London',
  date: '2027-05-15',
  start: '11:30',
  everyS: 0,
  ...more,
})
/** "line: time temp sensor" of each reading, and "line! sentence" of each fault. */
const keptLine = (document: unknown): Line | null => {
  const read = readEntry(document)
  return read.ok ? { entry: read.value, document: document as EntryDocument } : null
}
function told(text: string, given: Match) {
  const { readings, faults } = readFile(tableOf(text, guessShape(text)), given, WITHIN)
  return [
    ...readings.map(({ line, at, written, sensor }) => `${line}: ${whenText(at).slice(5, 19)} ${written} ${sensor}`),
    ...faults.map(({ line, sentence }) => `${line}! ${sentence}`),
  ]
}

describe('the file of a logger', () => {
  it.each([
    ['Time;Probe 1;Pit\n10:00;46,2;110,5\n10:01;46,4;111,0\n', { separator: ';', decimal: ',', head: 1 }],
    ['time,core\n0,46.2\n5,46.4\n', { separator: ',', decimal: '.', head: 1 }],
    ['Device: L-2\nSerial: 44\n\ntime\tcore °F\n10:00\t115\n10:01\t116\n', { separator: '\t', decimal: '.', head: 4 }],
    ['2027-05-15T10:00:00Z,46.2\r\n2027-05-15T10:01:00Z,46.3\r\n', { separator: ',', decimal: '.', head: null }],
    ['"time" ,"core" \n"0" ,"46.2" \n"5" ,"46.4" \n', { separator: ',', decimal: '.', head: 1 }],
  ])('%j is laid out as %j', (text, shape) => expect(guessShape(text)).toEqual(shape))

  it.each([
    ['date,time,a\n15/05/2027,10:00,1\n15/05/2027,10:01,1', { time: 1, date: 0, form: 'clock', order: 'dmy' }],
    [
      'a,when\n1,05/15/2027 10:00:00 AM\n2,05/15/2027 10:01:00 AM',
      { time: 1, date: null, form: 'date-time', order: 'mdy' },
    ],
    ['minutes,a\n0,20\n1,21', { time: 0, date: null, form: 'elapsed-min', order: 'dmy' }],
    ['unix,a\n1810375200,20\n1810375260,21', { time: 0, date: null, form: 'epoch-s', order: 'dmy' }],
    ['x,a\nq,20\nr,21', { time: null, date: null, form: 'elapsed-s', order: 'dmy' }],
  ])('of %j the time is guessed as %j', (text, guess) =>
    expect(guessTime(tableOf(text, guessShape(text)))).toEqual(guess),
  )

  it('tells the unit by the name of a column or by its cells', () => {
    const table = tableOf('t,core (F),pit °C,"Cook Food",d\n0,115,110,46,46.2 C', guessShape('t,a\n0,1'))
    expect([1, 2, 3, 4].map((i) => guessUnit(table, i, 'F'))).toEqual(['F', 'C', 'F', 'C'])
  })
})

describe('readings from a file', () => {
  it.each<[string, Match, readonly string[]]>([
    [
      't,a,b\n2027-05-15 12:00:00,46.2,110\n2027-05-15T12:00:00+02:00,---,111\n',
      match([TIME, core(), core('C', 'cooker')]),
      ['2: 05-15T11:00:00 46.2 °C core', '2: 05-15T11:00:00 110 °C cooker', '3: 05-15T10:00:00 111 °C cooker'],
    ],
    [
      't;a\n23:59:30;115,3\n0:00:30;115,5\n',
      match([TIME, core('F')], { form: 'clock', decimal: ',' }),
      ['2: 05-15T22:59:30 115.3 °F core', '3: 05-15T23:00:30 115.5 °F core'],
    ],
    [
      't,a\n0:01,46\n23:58,45\n',
      match([TIME, core()], { form: 'clock', date: '2027-05-16' }),
      ['2: 05-15T23:01:00 46 °C core', '3: 05-15T22:58:00 45 °C core'],
    ],
    ['t,a\n90,46\n', match([TIME, core()], { form: 'elapsed-s' }), ['2: 05-15T10:31:30 46 °C core']],
    ['t,a\n1:05:00,46\n', match([TIME, core()], { form: 'elapsed-hms' }), ['2: 05-15T11:35:00 46 °C core']],
    [
      't,a\n2027-10-31 01:30,46\n2027-10-31 01:59,46\n2027-10-31 01:10,47\n',
      match([TIME, core()]),
      ['2: 10-31T00:30:00 46 °C core', '3: 10-31T00:59:00 46 °C core', '4: 10-31T01:10:00 47 °C core'],
    ],
  ])('%j', (text, given, expected) => expect(told(text, given)).toEqual(expected))

  it('each fault is one sentence at its line, and the rest is kept', () => {
    const text = [
      't,a',
      '2027-05-15 12:00,46.2 F',
      '2027-05-15 12:01,1150',
      '2027-02-30 12:02,46',
      '2027-05-15 12:03,46,47',
      '2029-05-15 12:04,46',
      '2027-03-28 01:30,46',
      '2027-05-15 12:05,4x6',
      '2027-05-15 12:06,46',
    ].join('\n')
    const given = match([TIME, core()])
    const all = told(text, given)
    expect(all[0]).toBe('9: 05-15T11:06:00 46 °C core')
    expect(all.slice(1).map((one) => one.slice(0, 61))).toEqual([
      '2! “46.2 F” is in °F; the column is set to °C. Change the uni',
      '3! 1150 °C is no reading of a probe. One reads from −40 °C to',
      '4! “2027-02-30 12:02” is no date and time, such as 2027-05-15',
      '5! The line has 3 cells; the others have 2.',
      '6! 2029-05-15 12:04+01:00 is later than now. Check the date a',
      '7! “2027-03-28 01:30” does not exist in Europe/London: the cl',
      '8! “4x6” is no temperature. The decimal sign is set to a poin',
    ])
  })

  it('are thinned to the first of each stretch', () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${i},${20 + i}`).join('\n')
    const table = tableOf(`t,a\n${rows}`, guessShape('t,a\n0,1'))
    const { readings, thinned } = readFile(table, match([TIME, core()], { form: 'elapsed-s', everyS: 30 }), WITHIN)
    expect([readings.map(({ written }) => written), thinned]).toEqual([['20 °C', '50 °C'], 58])
  })

  it('wait until every column is told', () => {
    const faults = [
      match([NONE, core()]),
      match([TIME, NONE]),
      match([TIME, core(), core()]),
      match([TIME, core()], { form: 'clock', date: '' }),
      match([TIME, core()], { form: 'elapsed-s', start: '25:00' }),
      match([TIME, core()]),
    ].map(matchFault)
    expect(faults.map((fault) => fault?.slice(0, 24) ?? null)).toEqual([
      'Say which column is the ',
      'Say which column is whic',
      'Two columns are core of ',
      'Give the date of the fir',
      'Give the time at which t',
      null,
    ])
  })

  it('are entries that read, whose id follows from what they say', () => {
    const text = 't,a\n2027-05-15 12:00,46.20\n2027-05-15 12:00,46.2\n2027-05-15 12:00,46.3\n'
    const { readings } = readFile(tableOf(text, guessShape(text)), match([TIME, core()]), WITHIN)
    const entries = readings.map((reading) => entryOf('shoot-1', reading))
    expect(entries.map((entry) => readEntry(entry).ok)).toEqual([true, true, true])
    expect(entries.every(({ id }) => ENTRY_ID.test(String(id)))).toBe(true)
    expect(entries[0]).toEqual(entries[1])
    const receipt = {
      received: instant(Date.parse('2027-05-15T15:00Z')),
      sent: instant(Date.parse('2027-05-15T14:00Z')),
    }
    const log = merge(EMPTY_LOG, [{ ...(keptLine(entries[0]) as Line), receipt }])
    expect([...log.values()].map((one) => new Clocks(log).timeOf(one))).toEqual([readings[0]?.at])
    expect(new Set([...entries.map(({ id }) => id), entryOf('shoot-2', readings[0] as never).id]).size).toBe(3)
  })
})
