import { describe, expect, it } from 'vitest'
import type { Claim } from '../../../lib/card/claim'
import { judge } from '../../../lib/card/rules'

const base: Claim = {
  id: 'x',
  kind: 'roast-time',
  cook: 'hero',
  sentence: '',
  step: '',
  words: '',
  start: 0,
  hedge: 'none',
  low: 0,
  high: 0,
  unit: 's',
  says: '',
}
const MIN = 60
/** A window of 120 to 180 min, likely 145. */
const found = { nature: 'outcome', figure: { low: 120 * MIN, likely: 145 * MIN, high: 180 * MIN } } as const
const say = (low: number, high: number, hedge: Claim['hedge'] = 'none') =>
  judge({ ...base, low: low * MIN, high: high * MIN, hedge }, found).finding

describe('rules of an outcome', () => {
  it.each([
    ['near the likely', 150, 150, 'borne-out'],
    ['inside, off the likely', 175, 175, 'borne-out-with-care'],
    ['at the edge', 120, 120, 'borne-out-with-care'],
    ['past the edge by more than rounding', 115, 115, 'contradicted'],
    ['two windows off', 300, 300, 'contradicted'],
    ['the whole window', 120, 180, 'borne-out'],
    ['a range narrower than is known', 144, 150, 'borne-out-with-care'],
    ['a range off the likely', 155, 178, 'borne-out-with-care'],
    ['a range as wide as the day', 30, 400, 'borne-out-with-care'],
    ['a range beyond', 190, 240, 'contradicted'],
  ] as const)('%s: %d to %d min', (_, low, high, finding) => {
    expect(say(low, high)).toBe(finding)
  })
  it('"about" counts more as near', () => {
    expect(say(170, 170)).toBe('borne-out-with-care')
    expect(say(170, 170, 'about')).toBe('borne-out')
  })
  it('a bound holds for all cooks, for some, or for none', () => {
    const under = (min: number) => say(Number.NEGATIVE_INFINITY, min, 'at-most')
    expect([under(200), under(150), under(90)]).toEqual(['borne-out', 'borne-out-with-care', 'contradicted'])
    const over = (min: number) => say(min, Number.POSITIVE_INFINITY, 'at-least')
    expect([over(100), over(150), over(240)]).toEqual(['borne-out', 'borne-out-with-care', 'contradicted'])
  })
})

describe('rules of a setting', () => {
  const plan = { nature: 'setting', figure: { low: 150, likely: 150, high: 150 } } as const
  const at = (low: number, high = low) =>
    judge({ ...base, kind: 'cooker-temperature', unit: 'degC', low, high }, plan).finding
  it('is right to the rounding of a dial, with care within its scatter, and wrong beyond', () => {
    expect([at(150), at(149), at(155), at(160), at(170), at(149, 152)]).toEqual([
      'borne-out',
      'borne-out',
      'borne-out',
      'borne-out-with-care',
      'contradicted',
      'borne-out',
    ])
  })
})
