import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { allergenSentence } from '../../../lib/card/allergens'
import { buildCard } from '../../../lib/card/card'
import type { Nutrient } from '../../../lib/card/foods'
import { ingredientLine } from '../../../lib/card/ingredients'
import { labelAmount } from '../../../lib/card/label-rounding'
import { MEAT_ROWS, type MeatRow } from '../../../lib/card/meat-rows'
import { eatenOf } from '../../../lib/card/nutrition'
import { cookedMeatKg } from '../../../lib/card/yield'
import { parseShoot } from '../../../lib/plan/parse'
import { madeUpForecast } from './made-up-forecast'

const published = (name: string) => JSON.parse(readFileSync(`tests/fixtures/published/${name}.json`, 'utf8')).values
type Worked = { readonly nutrient: string; readonly x: number; readonly label: string }
type Row = { readonly item: string; readonly kcal: number; readonly protein_g: number; readonly fat_g: number }
const ROWS = published('nutrition-and-yields').nutrients as Row[]
const meat = ({ protein_g, fat_g }: Row): MeatRow => ({
  number: 'x',
  protein: protein_g,
  fat: fat_g,
  saturated: null,
  cholesterol: null,
  sodium: null,
})
const rowNamed = (item: string) => {
  const found = ROWS.find((r) => r.item === item)
  if (!found) throw new RangeError(item)
  return found
}

const lamb = JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8'))
function recipeOf(card: object, made: Parameters<typeof madeUpForecast>[0] = {}) {
  const cut = made.cut ?? 'lamb-leg-bone-in'
  const cooks = [{ ...lamb.cooks[0], roast: { cut, mass: '3.2 kg', start: '4 °C' } }]
  const read = parseShoot({ ...lamb, cooks, card })
  if (!read.ok) throw new RangeError(read.problems.map((p) => p.sentence).join('\n'))
  return buildCard(read.value, new Map([['hero', madeUpForecast(made)]])).recipe
}

describe('nutrition', () => {
  it.each(published('nutrition-label-rounding').worked as Worked[])('$nutrient of $x is labelled $label', (worked) => {
    const nutrient = (worked.nutrient === 'calories' ? 'kcal' : worked.nutrient) as Nutrient
    expect(labelAmount(nutrient, worked.x)).toBe(worked.label.replace(/ m?g$/, ''))
  })
  it.each(ROWS)('energy of $item is that of its protein and fat', (row) => {
    expect(Math.abs((eatenOf({ as: '', raw: meat(row), roasted: meat(row) }, 0.1).kcal ?? 0) - row.kcal)).toBeLessThan(
      1,
    )
  })
  it.each([
    ['lamb leg whole, lean only, 1/4in, choice, raw', 'lamb leg whole, lean only, choice, roasted', 72.7],
    ['lamb loin lean raw', 'lamb loin lean roasted', 78.5],
    ['lamb rib lean raw', 'lamb rib lean roasted', 76.4],
    ['lamb shoulder arm lean raw', 'lamb shoulder arm lean roasted', 78.5],
  ])('%s, cooked with the published yield, has what the published roast has', (raw, roasted, yieldPct) => {
    const [before, after] = [rowNamed(raw), rowNamed(roasted)]
    const eaten = eatenOf({ as: '', raw: meat(before), roasted: meat(after) }, 10 / yieldPct)
    expect(Math.abs((eaten.protein ?? 0) - after.protein_g)).toBeLessThan(0.05)
    // Lean meat takes up fat from beside it; more than it had is not counted.
    expect(eaten.fat).toBeLessThanOrEqual((before.fat_g * 100) / yieldPct + 1e-9)
  })
  it('the leg of lamb with its fat comes to 258 kcal in 100 g, as published', () => {
    const leg = MEAT_ROWS['lamb-leg-bone-in']
    if (!leg?.roasted) throw new RangeError('no leg')
    const eaten = eatenOf(leg, (0.1 * leg.roasted.protein) / leg.raw.protein)
    expect(eaten.kcal).toBeCloseTo(258, 0)
    expect(eaten.fat).toBeCloseTo(16.48, 1)
  })
  it('keeps the protein and never more fat than there was, in every cut of the table', () => {
    for (const [id, rows] of Object.entries(MEAT_ROWS)) {
      const eaten = eatenOf(rows, 0.1)
      expect([id, eaten.protein]).toEqual([id, expect.closeTo(rows.raw.protein)])
      expect([id, (eaten.fat ?? 0) <= rows.raw.fat]).toEqual([id, true])
      expect([id, (eaten.fat ?? 0) > 0.3 * rows.raw.fat]).toEqual([id, true])
    }
  })
  it('counts what is known, names what is not, and salt tells in the sodium', () => {
    const { nutrition } = recipeOf({
      serves: 10,
      ingredients: [
        { what: 'salt', much: '40 g' },
        { what: 'the house rub', much: '3 tbsp' },
        { what: 'lump charcoal', much: '4 kg' },
      ],
    })
    const sodium = Number(nutrition.rows.find((r) => r.name === 'Sodium')?.amount)
    expect(Math.abs(sodium - (38758 * 0.4) / 10 - 140)).toBeLessThan(30)
    expect(nutrition.note.join(' ')).toContain('Not in it: the house rub.')
  })
  it('is not printed without servings, nor for a cut whose composition nobody gives, and says why', () => {
    expect(recipeOf({}).nutrition).toEqual({ rows: [], note: [expect.stringContaining('how many it serves')] })
    expect(recipeOf({ serves: 4 }, { cut: 'veal-loin-bone-in' }).nutrition).toEqual({
      rows: [],
      note: [expect.stringContaining('no table we hold gives the composition of')],
    })
  })
  it('prints only what is known of a cut that no nutrient table has', () => {
    const { nutrition } = recipeOf({ serves: 8 }, { cut: 'beef-brisket' })
    expect(nutrition.rows.map((r) => r.name)).not.toContain('Sodium')
    expect(nutrition.note.join(' ')).toContain('Not known for this cut: saturated, cholesterol, sodium.')
  })
})

describe('the rest of the recipe', () => {
  it('bone loses nothing: what is left to slice is the meat without what it lost', () => {
    expect(cookedMeatKg(3.2, 0.2, 0.2)).toBeCloseTo(1.92)
    expect(recipeOf({}).yield).toMatch(/^About 2 kg \/ 4\.3 lb to slice, off the bone: it loses/)
  })
  it('allergens are named by the words of the authority, and what is not known is owned up to', () => {
    const lines = ['mustard', 'soy sauce', 'our rub'].map((what) => ingredientLine({ what, much: '' }))
    const sentence = (authority: string) =>
      allergenSentence({ lines, declared: ['sulphites'], isFish: false, authority })
    expect(sentence('EU')).toBe(
      'Contains wheat (gluten), soybeans, mustard and sulphites. Allergens not looked into: our rub.',
    )
    expect(sentence('US')).toBe('Contains wheat, soy, mustard and sulfites. Allergens not looked into: our rub.')
    expect(recipeOf({ ingredients: [{ what: 'leg of lamb', much: '3.2 kg' }] }).allergens).toBe('')
    expect(JSON.stringify(recipeOf({}))).not.toMatch(/free from|free of/i)
  })
  it('what is made for the roast, and food that is called chips or ice, is not passed over', () => {
    const named = ['lamb rub', 'lamb, marinated in soy sauce', 'tortilla chips', 'ice cream', 'oak chips', 'boned lamb']
    const { allergens } = recipeOf({ ingredients: named.map((what) => ({ what, much: '' })) })
    expect(allergens).toBe(`Allergens not looked into: ${named.slice(0, 4).join(', ')}.`)
  })
  it('kit comes from the plan and the author', () => {
    const { kit } = recipeOf({ kit: ['a drip tray'] })
    expect(kit).toEqual(expect.arrayContaining(['charcoal', 'a probe thermometer', 'long tongs', 'a drip tray']))
  })
  it('an allergen that is none is refused at its place', () => {
    const read = parseShoot({ ...lamb, card: { allergens: ['mustrad'] } })
    expect(read.ok ? '' : read.problems[0]?.sentence).toContain('Did you mean "mustard"?')
  })
})
