import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { ENTRY } from '../../../lib/log/entry'
import { eraseFromEntry, LOG_FIELDS, personsIn } from '../../../lib/log/erase-from-log'
import { foldLog } from '../../../lib/log/fold'
import type { Line } from '../../../lib/log/log'
import { readEntry } from '../../../lib/log/read-entry'
import { erasureOf } from '../../../lib/plan/erase-person'
import { erasurePlan, knownAs } from '../../../lib/plan/known-as'
import { textPaths } from '../../../lib/plan/text-paths'
import { replay } from '../../../lib/session/reduce'
import type { SessionEvent } from '../../../lib/session/session'
import { lambWith } from '../plan/shoots'
import { sessionDayWith } from '../session/made-up-day'
import { at, line, logOf, mark, newId, reading } from './lines'

const shoot = lambWith({
  '/people': [
    { id: 'maria', name: 'Maria Quillfeather', roles: ['camera'] },
    { id: 'tom', roles: ['cook'] },
  ],
})
const lines: Line[] = [
  reading(0, 40, { device: 'marias-probe', aheadS: 90 }),
  mark(5, 'pull', { person: 'maria' }),
  mark(6, 'pull', { person: 'tom', device: 'phone-b' }),
  line(7, 'call-answer', { call: 'first-cut', answer: 'cannot' }, { person: 'maria' }),
  line(8, 'call-answer', { call: 'first-cut', answer: 'hand-over', to: 'maria' }, { person: 'tom', device: 'phone-b' }),
  line(9, 'late', { for: '20 min', who: 'maria' }),
  line(10, 'meal', { is: 'begins', people: ['tom', 'maria'] }),
  line(11, 'plan-change', {
    version: 2,
    what: 'Maria Quillfeather 20 min later',
    moves: [{ id: 'shot-herbs', start: '2027-05-15T15:05Z', end: '2027-05-15T15:11Z', people: ['maria'] }],
  }),
  line(12, 'note', { text: 'Maria moved the lamp' }, { person: 'tom' }),
  line(13, 'take', { shot: 'herbs', take: 1, camera: 'A', note: 'Quillfeather, Maria: soft' }),
  line(14, 'late', { for: '5 min', who: 'Maria Quillfeather' }),
]
const late = lines[5]?.entry.id as string
lines.push(line(15, 'correction', { corrects: late, put: { who: 'tom' }, why: 'not maria' }))
lines.push(line(16, 'correction', { corrects: newId(), put: { who: 'maria', text: 'Maria' } }))

const persons = [...new Set(lines.flatMap(({ document }) => personsIn(document)))]
const devices = ['marias-probe', 'phone-a', 'phone-b']
const erasure = (notes: boolean) =>
  erasureOf(erasurePlan([shoot], knownAs([shoot], ['maria']), { persons, devices }, notes))
const erased = (notes: boolean): Line[] =>
  lines.map((one) => {
    const { document } = eraseFromEntry(one.document, erasure(notes))
    const read = readEntry(document)
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    return { ...one, document, entry: read.value }
  })
/** The words of free texts, which are no part of the day's course. */
const withoutTexts = (text: string) => text.replace(/"(text|note|notes|what|why)":("[^"]*"|\["[^"]*"\])/g, '"$1":""')

describe('one person taken out of the log', () => {
  it('has a decision for every text of every kind of entry', () => {
    const paths = [...textPaths(z.toJSONSchema(ENTRY, { io: 'input' })).keys()]
    expect(paths.filter((path) => !(path in LOG_FIELDS))).toEqual([])
  })

  it('leaves order, times and the day that the log folds to as they were, the ids apart', () => {
    const renamed = withoutTexts(JSON.stringify(foldLog(logOf(...lines))))
      .replaceAll('"maria"', '"crew-1"')
      .replaceAll('"Maria Quillfeather"', '"crew-2"')
      .replaceAll('marias-probe', 'device-1')
    expect(JSON.parse(withoutTexts(JSON.stringify(foldLog(logOf(...erased(true))))))).toEqual(JSON.parse(renamed))
    expect(erased(true).map(({ entry, receipt }) => [entry.id, entry.at, receipt])).toEqual(
      lines.map(({ entry, receipt }) => [entry.id, entry.at, receipt]),
    )
  })

  it('leaves the calls and alerts of the day as they were, the ids apart', () => {
    const day = sessionDayWith()
    const logged = [
      mark(20, 'meat-on', { person: 'cam-1' }),
      line(61, 'call-answer', { call: 'call-first-cut', answer: 'coming' }, { person: 'presenter' }),
      line(64, 'late', { for: '10 min', who: 'cam-1' }, { person: 'cam-1' }),
      line(70, 'call-answer', { call: 'call-first-cut', answer: 'hand-over', to: 'cam-2' }, { person: 'cam-1' }),
    ]
    const events = (lines: readonly Line[]): SessionEvent[] =>
      Array.from({ length: 120 }, (_, minute): SessionEvent[] => [
        ...lines
          .filter((one) => one.entry.at === at(minute))
          .map((one) => ({ id: one.entry.id, at: at(minute), kind: 'line' as const, line: one })),
        { id: `tick-${minute}`, at: at(minute), kind: 'tick' },
      ]).flat()
    // In the order of letters the neutral id comes after the other camera's.
    const renamed = <T>(value: T): T => JSON.parse(JSON.stringify(value).replaceAll('cam-1', 'crew-1'))
    const before = replay(day, events(logged))
    const after = replay(renamed(day), events(logged.map(renamed)))
    expect(before[1].length).toBeGreaterThan(2)
    expect(JSON.stringify(after)).toBe(JSON.stringify(renamed(before)))
  })

  it('says nothing of them any more where single words are taken too, corrections included', () => {
    expect(JSON.stringify(erased(true))).not.toMatch(/maria|quillfeather/i)
  })

  it('without that, leaves and tells the texts that have one word of the name', () => {
    const left = lines.flatMap(({ document }) => eraseFromEntry(document, erasure(false)).left.map(({ text }) => text))
    expect(left).toEqual(['Maria moved the lamp', 'Quillfeather, Maria: soft', 'not maria', 'Maria'])
  })
})
