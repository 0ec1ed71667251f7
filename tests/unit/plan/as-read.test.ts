import { describe, expect, test } from 'vitest'
import { localeOf } from '../../../app/locale'
import { allAsRead, asRead, CORES_OWN, type ReadersWay, typedClock } from '../../../lib/plan/as-read'

const american: ReadersWay = { clock: '12h', dates: 'month-first' }

describe('times and dates as the reader writes them', () => {
  test.each([
    ['about 14:35, 14:28 to 14:46', 'about 2:35 pm, 2:28 pm to 2:46 pm'],
    ['00:05', '12:05 am'],
    ['at 9:05 am', 'at 9:05 am'],
    ['Call cam-1 at 12:00.', 'Call cam-1 at 12:00 pm.'],
    ['First slice (9:05)', 'First slice (9:05 am)'],
    ['Saturday 15 May 2027 · leg of lamb', 'Saturday, May 15, 2027 · leg of lamb'],
    ['Friday 14 May, evening', 'Friday, May 14, evening'],
    ['good until 3 March 2028.', 'good until March 3, 2028.'],
  ])('%s', (written, read) => {
    expect(asRead(written, american)).toBe(read)
    expect(asRead(written, CORES_OWN)).toBe(written)
  })
  test.each(['2027-05-15T18:30+01:00', '16:05:12:10', '16:9', '1 h 15 min', '3.10:15', '24:10'])(
    'no time of day: %s',
    (text) => expect(asRead(text, american)).toBe(text),
  )
  test('everything a page shows, and nothing that is not a text', () => {
    const edits = [{ pointer: '/day/wrap', value: '22:30' }]
    const shown = { call: '18:05', rows: [{ at: 1805, words: ['to 19:00'] }], none: null, edits }
    expect(allAsRead(shown, american)).toEqual({
      call: '6:05 pm',
      rows: [{ at: 1805, words: ['to 7:00 pm'] }],
      none: null,
      edits,
    })
    expect(allAsRead(shown, CORES_OWN)).toBe(shown)
  })
})

describe('a time of day as it is typed', () => {
  test.each([
    ['2:30 pm', '14:30'],
    ['12:05 AM', '00:05'],
    ['12 pm', '12:00'],
    ['7 p.m.', '19:00'],
    ['14:30', '14:30'],
    ['2:30 p', '2:30 p'],
    ['13:00 pm', '13:00 pm'],
    ['golden hour', 'golden hour'],
  ])('%s', (typed, kept) => expect(typedClock(typed)).toBe(kept))
})

describe('what a language says of its region', () => {
  test.each([
    ['en-US,en;q=0.9', '12h', 'month-first', 'us'],
    ['en-GB,en;q=0.8', '24h', 'day-first', 'metric'],
    ['en-IE', '24h', 'day-first', 'metric'],
    ['en-AU', '12h', 'day-first', 'metric'],
    ['de-DE', '24h', 'day-first', 'metric'],
    ['en', '24h', 'day-first', 'metric'],
    ['../../x', '24h', 'day-first', 'metric'],
    [null, '24h', 'day-first', 'metric'],
  ])('%s', (accepted, clock, dates, units) => {
    expect(localeOf(accepted)).toEqual({ way: { clock, dates }, units })
  })
})
