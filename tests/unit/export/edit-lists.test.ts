import { describe, expect, it } from 'vitest'
import { takeRows, takesCsv } from '../../../lib/export/best-takes'
import { cameraClockWords } from '../../../lib/export/camera-clocks'
import { clipsOfTakes } from '../../../lib/export/clips-of-takes'
import { continuityReport } from '../../../lib/export/continuity-report'
import { csvOf } from '../../../lib/export/csv'
import { pickUpSummary, pickUpsOf } from '../../../lib/export/pick-ups'
import { rowsOf } from '../../../lib/log/csv'
import { foldLog } from '../../../lib/log/fold'
import type { Line } from '../../../lib/log/log'
import { line, logOf, mark } from '../log/lines'
import { lambWith, read } from '../plan/shoots'
import { CLOCKS, clip, filmed, take, withClips } from './filmed-day'

describe('the list of takes', () => {
  const shoot = withClips(clip('A001', '14:28:00:00'), clip('A002', '15:28:30:00', { length: '6 min' }))
  const rows = takeRows(shoot, filmed(...CLOCKS))
  it('has the plan’s order, the good take first, and the clip and timecode of each', () => {
    expect(rows.map(({ best, shot, take: n, camera }) => [best, shot, n, camera])).toEqual([
      [true, 'Opening, to camera at the gate', 1, 'A'],
      [true, 'Seasoning by hand', 2, 'A'],
      [false, 'Seasoning by hand', 1, 'A'],
      [true, 'Meat goes on', 1, 'B'],
      [true, 'Probe goes in, close', 1, 'A'],
      [true, 'First slice with sound', 1, 'A'],
    ])
    const last = rows.at(-1)
    expect([last?.clip, last?.timecodeIn, last?.timecodeOut, last?.clockIn]).toEqual([
      'A002',
      '15:29:00:00',
      '15:34:00:00',
      '15:29:00',
    ])
    expect([rows[0]?.clip, rows[0]?.timecodeIn]).toEqual(['', ''])
  })
  it('is read back from its table, and nothing in it runs as a formula', () => {
    const csv = takesCsv(rows, 'Invented readings')
    const cells = rowsOf(csv, ',').map((row) => row.cells)
    expect(cells).toHaveLength(8)
    expect(cells[6]?.at(-1)).toBe('Lovely, <steam> & sound')
    expect(cells[7]?.at(-1)).toBe('Invented readings')
    expect(csv.split('\r\n')).toHaveLength(9)
    expect(csvOf([['=1+1', '+1', '-1', '@x', '\tx', 'a "b"\nc', 'plain']])).toBe(
      `'=1+1,'+1,'-1,'@x,'\tx,"a ""b""\nc",plain\r\n`,
    )
  })
  it('gives clips where the takes bear timecodes', () => {
    const day = filmed(
      take(20, 'smoke', { roll: 'start', timecode: '13:20:00:10' }),
      take(21.5, 'smoke', { roll: 'end', verdict: 'good' }),
    )
    expect(clipsOfTakes(day, '25')).toEqual([
      { id: 'A001', camera: 'A', start: '13:20:00:10', rate: '25', length: '90 s' },
    ])
    expect(read(lambWith({ '/clips': clipsOfTakes(day, '29.97 drop') })).clips?.[0]?.start).toBe('13:20:00;10')
  })
})

describe('camera clocks in words', () => {
  it('say how far each is off, and what stands in for one that nobody read', () => {
    expect(cameraClockWords(withClips(), filmed(...CLOCKS))).toEqual([
      'Camera A runs with the set’s clock, read at 12:40.',
      'Camera B runs 12 s ahead, read at 12:40.',
    ])
    const later = line(220, 'camera-clock', { camera: 'B', timecode: '16:38:55:00' })
    const odd = line(0, 'camera-clock', { camera: 'C', timecode: '01:02:03:04' })
    const words = cameraClockWords(withClips(), filmed(...CLOCKS.slice(1), later, odd))
    expect(words[0]).toMatch(/^Camera A: nobody read its clock.*time of day/)
    expect(words[1]).toBe('Camera B runs 1 min 05 s behind, read at 16:40, losing 1 min 17 s since 12:40.')
    expect(words[2]).toBe('Camera C’s timecode is not the time of day: it read 01:02:03:04 at 13:00.')
  })
})

describe('pick-ups', () => {
  const of = (id: string, ...more: readonly Line[]) =>
    pickUpsOf(withClips(), filmed(...more)).find(({ shot }) => shot === id)
  it('are the shots without a good take, with what each wants and how it can still be had', () => {
    expect(pickUpsOf(withClips(), filmed()).map(({ shot }) => shot)).not.toContain('opening')
    expect(of('sear')).toMatchObject({ became: 'missed', wants: 'sear, as it happens', otherRoast: true })
    const early = foldLog(logOf(mark(0, 'meat-on')))
    expect(pickUpsOf(withClips(), early).find(({ shot }) => shot === 'sear')).toMatchObject({
      otherRoast: false,
      how: 'It has not come to it yet by the log: take it then.',
    })
    expect(of('turn')).toMatchObject({ became: 'no take in the log', otherRoast: true })
    expect(of('beauty')).toMatchObject({
      wants: 'the roast sliced',
      otherRoast: false,
      how: expect.stringMatching(/^Cold slices will do/),
    })
    expect(of('beauty', line(160, 'food', { cook: 'hero', is: 'served' }))).toMatchObject({
      otherRoast: true,
      how: expect.stringMatching(/was served/),
    })
    expect(of('raw-beauty')).toMatchObject({ otherRoast: true, how: expect.stringMatching(/need not be cooked/) })
    expect(of('carryover')).toMatchObject({ wants: 'the roast resting', otherRoast: true })
    expect(of('charcoal')).toMatchObject({ wants: 'the fire made ready', otherRoast: false })
    expect(of('garden')).toMatchObject({ wants: 'no food, daylight', otherRoast: false })
    expect(of('seasoning', take(1, 'seasoning', { take: 2, verdict: 'no-good' }))?.became).toBe('no good take')
  })
  it('come to one sentence', () => {
    expect(pickUpSummary(pickUpsOf(withClips(), filmed()))).toMatch(
      /^\d+ shots have no good take; \d+ want another roast\.$/,
    )
    expect(pickUpSummary([])).toBe('Every shot of the plan has a good take.')
  })
})

describe('the continuity report', () => {
  it('has the notes by shot, the rest by roast and state, each with what the log knew', () => {
    const report = continuityReport(
      withClips(),
      filmed(
        line(
          101,
          'note',
          { text: 'Glove on the left', shot: 'sear', state: 'cooking', photo: 'abc.jpg' },
          { person: 'stylist' },
        ),
        line(155, 'note', { text: 'Fat cap up', cook: 'hero', state: 'sliced' }),
        take(100, 'sear', { verdict: 'no-good', note: 'Soft' }),
      ),
      'metric',
    )
    const sear = report.shots.find(({ title }) => title.endsWith('Sear, close'))
    expect(sear?.notes).toEqual([
      expect.objectContaining({
        clock: '14:41',
        text: 'Glove on the left',
        photo: 'abc.jpg',
        facts: 'Probe 40 °C, 1 h 41 min after the meat went on. Cooking.',
      }),
    ])
    expect(report.shots).toHaveLength(1)
    expect(sear?.takes).toBe('A take 1 no good: Soft')
    expect(report.roasts.map(({ title, notes }) => [title, notes[0]?.text])).toEqual([['hero, sliced', 'Fat cap up']])
  })
})
