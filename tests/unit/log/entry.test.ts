import { describe, expect, it } from 'vitest'
import { KINDS } from '../../../lib/log/entry'
import { ENTRY_ID, entryId } from '../../../lib/log/entry-id'
import { readLog, writeLog } from '../../../lib/log/ndjson'
import { readEntry } from '../../../lib/log/read-entry'
import { instant } from '../../../lib/units'
import { line, mark, newId, reading } from './lines'
import { RIGHT } from './right-entries'

const base = { id: newId(), at: '2027-05-15T16:05:12+01:00', by: { device: 'phone-a', person: 'cam-1' } }
const faults = (rest: object) => {
  const read = readEntry({ ...base, ...rest })
  return read.ok ? [] : read.problems.map(({ pointer, sentence }) => `${pointer}: ${sentence}`)
}

describe('ids of entries', () => {
  it('sort by time as text, and take their chance from the caller', () => {
    const chance = new Uint8Array(10).fill(255)
    expect(entryId(instant(1_469_918_176_385), new Uint8Array(10))).toBe('01ARYZ6S410000000000000000')
    expect(entryId(instant(0), chance)).toBe('0000000000ZZZZZZZZZZZZZZZZ')
    expect(entryId(instant(5), new Uint8Array(10)) < entryId(instant(6), new Uint8Array(10))).toBe(true)
    expect(entryId(instant(2 ** 48 - 1), chance)).toMatch(ENTRY_ID)
  })
  it('differ where any bit of chance differs', () => {
    const all = Array.from({ length: 80 }, (_, bit) => {
      const bytes = new Uint8Array(10)
      bytes[bit >> 3] = 1 << (bit & 7)
      return entryId(instant(1), bytes)
    })
    expect(new Set(all).size).toBe(80)
  })
  it('refuse too little chance and times that do not fit', () => {
    expect(() => entryId(instant(1), new Uint8Array(9))).toThrow(RangeError)
    expect(() => entryId(instant(-1), new Uint8Array(10))).toThrow(RangeError)
  })
})

describe('log entries', () => {
  it('of every kind read with all their fields set', () => {
    expect(Object.keys(RIGHT).sort()).toEqual([...KINDS].sort())
    expect(KINDS.flatMap((kind) => faults({ kind, ...RIGHT[kind] }))).toEqual([])
  })
  it.each([
    [{ kind: 'reading', cook: 'hero', sensor: 'core', temp: 46 }, '/temp: 46 what? Write "46 °C" or "46 °F".'],
    [
      { kind: 'reading', cook: 'hero', sensor: 'core', temp: '900 °C' },
      '/temp: 900 °C is no reading of a probe. Write one from −40 °C to 700 °C, such as "46.2 °C".',
    ],
    [
      { kind: 'reading', cook: 'hero', sensor: 'probe1', temp: '46 °C' },
      '/sensor: "probe1" is no probe. Write "core", "cooker" or "air"; a second one is "core-2".',
    ],
    [
      { kind: 'mark', cook: 'hero', moment: 'off-heet' },
      '/moment: "off-heet" is not a moment. Did you mean "off-heat"?',
    ],
    [
      { kind: 'mark', cook: 'hero', moment: 'pull', momment: 1 },
      '/momment: "momment" is not known here. Did you mean "moment"?',
    ],
    [{ kind: 'meat-on' }, '/kind: "meat-on" is not a kind of entry.'],
    [
      { kind: 'mark', cook: 'hero', moment: 'pull', at: '16:05' },
      '/at: "16:05" is no point in time. Write date, time and offset, "2027-05-15T16:05:12Z" or "2027-05-15T17:05:12+01:00".',
    ],
    [
      { kind: 'mark', cook: 'hero', moment: 'pull', id: '1' },
      '/id: "1" is no id. Write a ULID made by the sender: 26 letters and digits, "01J8ZK3V5Q0000000000000000".',
    ],
    [
      { kind: 'mark', cook: 'hero', moment: 'pull', by: {} },
      '/by/device: The device is missing here. Write letters, digits, hyphens and points, at most 60 ("phone-3f2a").',
    ],
    [
      { kind: 'take', camera: 'A', take: 1, timecode: '4pm' },
      '/timecode: "4pm" is no timecode. Write hours, minutes, seconds and frames, "16:05:12:10".',
    ],
    [
      { kind: 'correction', corrects: base.id },
      '/void: A correction either says "void": true or says in "put" what should have stood there. Write one of the two.',
    ],
    [
      { kind: 'correction', corrects: base.id, put: { by: {} } },
      '/put: "by" of an entry is never corrected. Void the entry and log another.',
    ],
  ])('with a fault are refused with a sentence at its field: %j', (rest, sentence) => {
    expect(faults(rest)[0]).toContain(sentence)
  })
  it('that are no entry at all are refused without a throw', () => {
    for (const value of [null, 3, 'x', [], {}, { kind: {} }]) expect(readEntry(value).ok).toBe(false)
  })
})

describe('a log as text', () => {
  it('comes back as it went out, receipts and all', () => {
    const lines = [
      reading(1, 20),
      mark(2, 'pull', { aheadS: 90 }),
      line(3, 'note', { text: 'smoke "blue"' }, { unsent: true }),
    ]
    const { lines: back, faults: none } = readLog(writeLog(lines))
    expect(none).toEqual([])
    expect(back).toEqual(lines)
    expect(writeLog(back)).toBe(writeLog(lines))
  })
  it('tells every fault by its line, and reads the others', () => {
    const good = writeLog([reading(1, 20)]).trim()
    const text = [
      good,
      '{"id":',
      '',
      good.replace('20 °C', '20'),
      '[]',
      good.replace(/"received":"[^"]*"/, '"received":"today"'),
    ].join('\n')
    const { lines, faults: told } = readLog(text)
    expect(lines).toHaveLength(1)
    expect(told.map(({ line: number, pointer, sentence }) => `${number} ${pointer}: ${sentence}`)).toEqual([
      '2 : This line is not JSON: in column 7, the line ends. Expected is a value.',
      '4 /temp: 20 what? Write "20 °C" or "20 °F".',
      '5 : This line holds no entry. Write { … }.',
      expect.stringContaining('6 /received: "today" is no point in time.'),
    ])
  })
})
