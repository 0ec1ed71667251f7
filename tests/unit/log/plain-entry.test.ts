import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { plainEntry } from '../../../lib/log/plain-entry'
import { readEntry } from '../../../lib/log/read-entry'
import { newId } from './lines'
import { RIGHT } from './right-entries'

const base = { id: newId(), at: '2027-05-15T16:05:12+01:00', by: { device: 'phone-a', person: 'cam-1' } }

/** What may stand in a field by mistake, beside what stands in some other entry. */
const ODD: readonly unknown[] = [
  ...Object.values(RIGHT).flatMap((rest) => Object.values(rest)),
  ...[undefined, null, true, 0, -1, 1.5, 1e7, '', ' ', 'Hero', 'a'.repeat(50), 'a'.repeat(3000), [], {}, ['cam-1']],
  ...['701 °C', '-41 °C', '46,2 °C', '13 h', '2 h 30 min', '-3 min', '3 kg', 'e\u0301te', '\u{1f525}', '99:99:99'],
  ...['2027-05-15', '2027-05-15T16:05Z', '2027-13-15T16:05Z', '1969-05-15T16:05Z', 'core-1', 'air-9', '-phone'],
  { device: 'phone-a' },
  { device: '', person: 'x' },
  { device: 'phone-a', more: 1 },
  { kind: 'mark' },
  JSON.parse('{ "__proto__": 1 }'),
]

describe('an entry read without the schema library', () => {
  it('is the one that the schema reads, of every kind', () => {
    for (const [kind, rest] of Object.entries(RIGHT)) {
      const document = { ...base, kind, ...rest }
      expect(plainEntry(document)).toEqual(readEntry(document))
      expect(plainEntry(document).ok).toBe(true)
    }
  })
  it('is refused where the schema refuses it, at the same field', () => {
    const kinds = Object.keys(RIGHT)
    const keys = [...new Set(['id', 'at', 'by', 'kind', 'more', ...Object.values(RIGHT).flatMap(Object.keys)])]
    const change = fc.tuple(fc.constantFrom(...keys), fc.constantFrom(...ODD))
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.array(change, { maxLength: 2 }), (kind, changes) => {
        const document = JSON.parse(JSON.stringify({ ...base, kind, ...RIGHT[kind], ...Object.fromEntries(changes) }))
        const [plain, whole] = [plainEntry(document), readEntry(document)]
        expect(plain.ok).toBe(whole.ok)
        if (plain.ok) expect(plain).toEqual(whole)
        if (!plain.ok && !whole.ok)
          expect(whole.problems.map(({ pointer }) => pointer)).toContain(plain.problems[0]?.pointer)
      }),
      { numRuns: 800, seed: 5 },
    )
  })
  it('says what is wrong where nothing can be read', () => {
    expect(plainEntry(null)).toMatchObject({ ok: false, problems: [{ pointer: '/kind' }] })
    expect(plainEntry({ ...base, kind: 'reading', cook: 'hero', sensor: 'core', temp: '46' })).toMatchObject({
      ok: false,
      problems: [{ pointer: '/temp', sentence: expect.stringContaining('46 what?') }],
    })
  })
})
