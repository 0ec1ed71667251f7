import { describe, expect, it } from 'vitest'
import { FOODS, foodNamed } from '../../../lib/card/foods'
import { bothAmounts, ingredientLine } from '../../../lib/card/ingredients'
import { gramWords, mlWords, ounceWords, spoonWords } from '../../../lib/card/print-amount'
import { readAmount, whyUnread } from '../../../lib/card/read-amount'
import { chance } from './made-up-forecast'

const food = (name: string) => foodNamed(name)
const both = (what: string, much: string) => Object.values(bothAmounts(much, food(what)))
/** g or ml of what was printed, read back. */
function readBack(printed: string): number {
  const read = readAmount(printed)
  if (read.kind === 'mass') return read.grams.high
  return read.kind === 'volume' ? read.ml.high : Number.NaN
}

describe('amounts as cooks write them', () => {
  it.each([
    ['salt', '35 g', '35 g', '2 tbsp'],
    ['coarse salt', '45 g', '45 g', '1½ oz'],
    ['coarse salt', '45 g (3 tbsp)', '45 g', '3 tbsp'],
    ['garlic', '6 cloves', '6 cloves', ''],
    ['parsley', 'a handful', 'a handful', ''],
    ['mint leaves', '40 g', '40 g', '1½ oz'],
    ['olive oil', '30 ml', '30 ml', '2 tbsp'],
    ['cider vinegar', '¼ cup', '60 ml', '¼ cup'],
    ['mustard', '1 tsp', '5 g', '1 tsp'],
    ['flour', '1 1/2 cups', '190 g', '1 1/2 cups'],
    ['black pepper', '1½ tsp', '3 g', '1½ tsp'],
    ['lamb', '1 lb 4 oz', '565 g', '1 lb 4 oz'],
    ['sherry', '2 fl oz', '60 ml', '2 fl oz'],
    ['sherry', '1–2 tbsp', '15 to 30 ml', '1–2 tbsp'],
    ['soy sauce', '2 tbsp + 1 tsp', '35 ml', '2 tbsp + 1 tsp'],
    ['our own rub', '2 tbsp', '30 ml', '2 tbsp'],
    ['saffron', '0.2 g', '0.2 g', 'less than ⅛ oz'],
    ['parsley', '2 tbsp chopped', '8 g', '2 tbsp chopped'],
    ['tomatoes', '2 x 400 g tins', '2 x 400 g tins', ''],
    ['cream', '1 pint', '1 pint', ''],
    ['flour', '1,500 g', '1,500 g', ''],
    ['salt', '0 g', '0 g', ''],
  ])('%s, %s: %s and %s', (what, much, metric, us) => expect(both(what, much)).toEqual([metric, us]))

  it('an amount that is not read says why', () => {
    expect(whyUnread('1,500 g')).toContain('can be read two ways')
    expect(whyUnread('1 pint')).toContain('473 ml in the US and 568 ml in Britain')
    expect(whyUnread('2 x 400 g')).toContain('No amount is read in it')
    for (const read of ['40 g', '1 to 2 tbsp', '6 cloves', 'a handful', '']) expect(whyUnread(read)).toBeNull()
  })

  const steps = (n: number, ...table: (readonly [upTo: number, step: number])[]) =>
    table.find(([upTo]) => n < upTo)?.[1] ?? Number.NaN
  /** To what each is rounded; spoons come in their sizes: half of it below a teaspoon, a seventh above, half cups past four. */
  it.each([
    ['grams', gramWords, 0.05, (n: number) => steps(n, [0.95, 0.1], [19.5, 1], [997.5, 5], [1e9, 50])],
    ['millilitres', mlWords, 0.25, (n: number) => steps(n, [4.75, 0.5], [19.5, 1], [97.5, 5], [995, 10], [1e9, 50])],
    ['ounces', ounceWords, 1.8, (n: number) => steps(n, [26.6, 3.55], [450, 7.09], [1e9, 28.35])],
    ['spoons and cups', spoonWords, 0.42, (n: number) => steps(n, [4.9, n], [990, n / 3.4], [1e9, 120])],
  ] as const)('%s: what is printed lies within its rounding of the truth, and something is never nothing', (...of) => {
    const [, words, least, step] = of
    const random = chance(7)
    const wrong: string[] = []
    for (let i = 0; i < 1500; i++) {
      const n = 10 ** (-2 + 6 * random())
      const printed = words(n)
      const near = n < least || Math.abs(readBack(printed) - n) <= 0.5001 * step(n)
      if (!near || /^0(?:\.0+)? /.test(printed)) wrong.push(`${n}: ${printed}`)
    }
    expect(wrong).toEqual([])
  })
})

describe('the table of foods', () => {
  it('has one food to a name, each weighed, and all nine values or none', () => {
    const names = FOODS.flatMap((f) => f.names)
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
    for (const f of FOODS) {
      expect([f.name, f.names.map((n) => foodNamed(n)?.name)]).toEqual([f.name, f.names.map(() => f.name)])
      const values = Object.values(f.per100g ?? {})
      expect([f.name, values.length === 0 || values.every((v) => v >= 0)]).toEqual([f.name, true])
      expect([f.name, f.gramsPerMl === null || (f.gramsPerMl > 0.03 && f.gramsPerMl < 1.5)]).toEqual([f.name, true])
    }
  })
  it('its energy is what protein, fat and carbohydrate give, where alcohol, acid and fibre give none', () => {
    const odd = FOODS.filter(({ per100g: c }) => {
      if (!c || c.kcal < 30) return false
      const reckoned = 4 * c.protein + 9 * c.fat + 4 * c.carbohydrate
      return c.kcal > 1.1 * reckoned + 8 || c.kcal < 0.6 * reckoned
    })
    expect(odd.map((f) => f.name)).toEqual(['balsamic vinegar', 'red wine', 'white wine', 'beer'])
  })
  it('knows a food by its name and harmless words beside it, never by its last word', () => {
    expect(foodNamed('freshly ground black pepper')?.name).toBe('black pepper')
    expect(foodNamed('Rosemary, picked and chopped')?.name).toBe('rosemary')
    for (const other of ['peanut butter', 'almond milk', 'red pepper', 'garlic salt', 'pepper sauce', 'salt beef'])
      expect(foodNamed(other)).toBeNull()
  })
  it('weighs what it is asked to', () => {
    const grams = (what: string, much: string) => ingredientLine({ what, much }).grams
    expect(grams('olive oil', '1 cup')).toBeCloseTo(216)
    expect(grams('salt', '1 tsp')).toBeCloseTo(6, 1)
    expect(grams('garlic', '6 fat cloves')).toBe(18)
    expect(grams('our rub', '20 g')).toBe(20)
    expect(ingredientLine({ what: 'our rub', much: '2 tsp', food: 'salt' }).grams).toBeCloseTo(12, 0)
    expect(grams('rosemary', '4 sprigs')).toBeNull()
    expect(grams('lump charcoal', '4 kg')).toBeNull()
  })
})
