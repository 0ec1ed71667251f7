import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { removeAt, setAt, valueAt } from '../../../lib/plan/edit'
import { parseShoot, parseShootText, toPointer } from '../../../lib/plan/parse'
import { demoText, FIXTURES, fixtureText, lamb, read } from './shoots'

const TEXTS = new Map([...FIXTURES.map((name): [string, string] => [name, fixtureText(name)]), ['demo', demoText()]])

describe('parseShoot: good shoots', () => {
  test.each([...TEXTS.keys()])('%s reads without a fault', (name) => {
    const result = parseShootText(TEXTS.get(name) as string)
    expect(result.ok ? [] : result.problems).toEqual([])
  })

  test('quantities arrive in SI', () => {
    const shoot = read(JSON.parse(fixtureText('turkey-oven')))
    const roast = shoot.cooks[0]?.roast
    expect(roast?.mass).toBeCloseTo(14 * 0.45359237, 12)
    expect(roast?.start).toBeCloseTo((40 - 32) / 1.8, 12)
    expect(shoot.place.altitude).toBeCloseTo(140 * 0.3048, 12)
  })

  test('a document survives writing and reading: same text, same shoot', () => {
    for (const text of TEXTS.values()) {
      const document = JSON.parse(text)
      const again = parseShootText(JSON.stringify(document))
      expect(again).toEqual(parseShoot(document))
      expect(JSON.parse(JSON.stringify(document))).toEqual(document)
    }
  })

  test('reading changes nothing in the document', () => {
    const document = lamb()
    parseShoot(document)
    expect(document).toEqual(lamb())
  })
  test('a byte order mark in front is no fault', () => expect(parseShootText(`\uFEFF${demoText()}`).ok).toBe(true))
})

/** Every pointer of a document to a value, the whole included. */
function pointersOf(value: unknown, path: readonly PropertyKey[] = []): string[] {
  const inner = typeof value === 'object' && value !== null ? Object.entries(value) : []
  return [toPointer(path), ...inner.flatMap(([key, each]) => pointersOf(each, [...path, key]))]
}
const parentOf = (pointer: string) => pointer.slice(0, pointer.lastIndexOf('/'))
const LEAKS = /invalid|expected|received|undefined|NaN|\[object|zod|too (small|big):/i

/** What is wrong with the answer to any document: a fault at no place, or told in no whole sentence. */
function unsound(document: unknown): string[] {
  const result = parseShoot(document)
  if (result.ok) return []
  if (result.problems.length === 0) return ['refused without a word']
  return result.problems.flatMap(({ pointer, sentence }) => {
    const stands = pointer === '' || valueAt(document, pointer) !== undefined
    const holder = valueAt(document, parentOf(pointer))
    const placed = stands || (typeof holder === 'object' && holder !== null)
    const whole = /^.{8,}[.?]$/s.test(sentence) && !LEAKS.test(sentence.replace(/"[^"]*"/g, ''))
    return placed && whole ? [] : [`${pointer}: ${sentence}`]
  })
}
function soundAnswer(document: unknown) {
  expect(unsound(document)).toEqual([])
}

// Thousands of documents; the limit is for a machine that does much else.
describe('parseShoot: whatever it is given', { timeout: 60_000 }, () => {
  test('any JSON gives a shoot, or faults at places that exist, in whole sentences', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (document) => soundAnswer(document)),
      { numRuns: 1000 },
    )
  })

  test('a good shoot with any value, anywhere, does the same', () => {
    const documents = [...TEXTS.values()].map((text) => JSON.parse(text))
    const spots = documents.flatMap((document) =>
      pointersOf(document)
        .slice(1)
        .map((pointer) => ({ document, pointer })),
    )
    const odd = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.constantFrom(
        '',
        ' ',
        '0 kg',
        '-1 min',
        '1e9 kg',
        '25:61',
        '__proto__',
        '2027-13-40',
        'Europe/Nowhere',
        'meat-on',
        'half',
        '🔥',
        1e308,
      ),
    )
    fc.assert(
      fc.property(fc.constantFrom(...spots), odd, ({ document, pointer }, value) =>
        soundAnswer(setAt(document, pointer, value)),
      ),
      { numRuns: 1000 },
    )
  })

  test('a good shoot with anything taken out does the same', () => {
    for (const text of [fixtureText('full'), fixtureText('minimal')]) {
      const document = JSON.parse(text)
      expect(
        pointersOf(document)
          .slice(1)
          .flatMap((pointer) => unsound(removeAt(document, pointer))),
      ).toEqual([])
    }
  })

  test('a good shoot with an unknown key anywhere is refused there, by name', () => {
    const document = lamb()
    const objects = pointersOf(document).filter((pointer) => {
      const value = valueAt(document, pointer)
      return typeof value === 'object' && value !== null && !Array.isArray(value)
    })
    for (const pointer of objects) {
      const result = parseShoot(setAt(document, `${pointer}/zzz`, 1))
      const found = result.ok ? [] : result.problems
      expect(
        found.some((each) => each.pointer === `${pointer}/zzz` && each.sentence.includes('"zzz"')),
        pointer,
      ).toBe(true)
    }
  })

  test('a key with a slash or a tilde keeps its pointer', () => {
    const result = parseShoot({ ...lamb(), 'a/b~c': 1 })
    expect(result.ok || result.problems[0]?.pointer).toBe('/a~1b~0c')
  })

  test('any text at all, and JSON cut off anywhere, is answered', () => {
    const told = (text: string) => {
      const result = parseShootText(text)
      return result.ok || result.problems.every(({ sentence }) => /[.?]$/.test(sentence))
    }
    fc.assert(fc.property(fc.string(), told), { numRuns: 1000 })
    const text = demoText()
    for (let end = 0; end < text.trimEnd().length; end += 7) expect(parseShootText(text.slice(0, end)).ok).toBe(false)
  })

  test('our reading of JSON agrees with the engine on what is JSON', () => {
    const engine = (text: string) => {
      try {
        JSON.parse(text)
        return true
      } catch {
        return false
      }
    }
    const broken = (text: string) => {
      const result = parseShootText(text)
      return !result.ok && /not JSON/.test(result.problems[0]?.sentence ?? '')
    }
    const mangled = fc
      .tuple(fc.json(), fc.nat(), fc.constantFrom('', ',', '"', '}', ']', '\\', '1', '\n', '-'))
      .map(
        ([json, at, extra]) => json.slice(0, at % (json.length + 1)) + extra + json.slice((at % (json.length + 1)) + 1),
      )
    fc.assert(
      fc.property(fc.oneof(fc.json(), mangled), (text) => {
        // The one thing stricter here than in the engine: a key that stands twice.
        const result = parseShootText(text)
        const twice = !result.ok && /second time/.test(result.problems[0]?.sentence ?? '')
        return twice || broken(text) !== engine(text)
      }),
      { numRuns: 1000 },
    )
  })
})
