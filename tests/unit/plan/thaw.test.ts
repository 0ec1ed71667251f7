import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { isWholeBird, thawOf } from '../../../lib/plan/thaw'
import { kilograms } from '../../../lib/units'

const published = JSON.parse(
  readFileSync(new URL('../../fixtures/published/thawing.json', import.meta.url), 'utf8'),
) as Record<'fridge' | 'cold_water', { lb: [number, number]; days: [number, number]; h: [number, number] }[]>
const bird = (lb: number) => thawOf(kilograms(lb * 0.45359237), true)

describe('thawing', () => {
  test.each(published.fridge)(
    'a whole bird of up to $lb.1 lb takes the longer of the published days',
    ({ lb, days }) => {
      expect(bird(lb[1]).fridge / 86_400).toBe(days[1])
      expect(bird(lb[0] + 0.1).fridge / 86_400).toBe(days[1])
    },
  )
  test.each(published.cold_water)('in cold water up to $lb.1 lb takes the longer of the published hours', ({ lb, h }) =>
    expect(bird(lb[1]).water / 3600).toBe(h[1]),
  )
  test('outside the table, and for other roasts, the rule holds: a day for 4 lb, half an hour for each lb', () => {
    expect(bird(30)).toEqual({ fridge: 8 * 86_400, water: 15 * 3600 })
    expect(thawOf(kilograms(3.2))).toEqual({ fridge: 2 * 86_400, water: 4 * 3600 })
  })
  test('a whole bird is one by its name in the catalogue', () =>
    expect(['turkey-whole', 'turkey-breast-bone-in', 'custom'].map(isWholeBird)).toEqual([true, false, false]))
})
