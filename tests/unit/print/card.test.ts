import { describe, expect, it } from 'vitest'
import type { CardModel } from '../../../lib/export/card'
import { addressLines } from '../../../lib/print/card-code'
import { printCard, sheetsIn } from '../../../lib/print/render'
import { MADE_UP_SIZES, modelOf, PUBLISHED } from '../export/made-up-card'
import { textIn } from './pdf-text'

const long = (n: number, words: string) =>
  Array.from({ length: n }, (_, i) => ({ id: `more-${i}`, text: `${words} It is round ${i + 1}.` }))
const squeezed = (text: string) => text.replace(/\s+/g, '')
/** Everything that the card says, as its parts have it. */
const wordsOf = (model: CardModel): string[] => [
  model.title,
  model.intro,
  ...model.ingredients.flatMap(({ what, much, other }) => [what, much, other]),
  ...model.notes,
  ...model.steps.map((step) => step.runs.map((run) => run.text).join('')),
  ...model.doneness.flatMap((row) => [row.word, row.middle, row.offHeat, row.authority]),
  ...model.cautions,
  ...model.howToKnow.flatMap(({ stage, know, roughly }) => [stage, know, roughly]),
  ...(model.sizes?.rows ?? []).flatMap(({ thick, weight, cells }) => [thick, weight, ...cells.map((c) => c.words)]),
  ...model.recipe.nutrition.rows.map(({ name, amount, unit }) => `${name} ${amount} ${unit}`),
  ...model.recipe.storage,
  ...model.housekeeping,
  model.foot,
  model.stamp,
]
const missing = (bytes: Uint8Array, words: readonly string[]) => {
  const held = squeezed(textIn(bytes))
  return words.filter((each) => !held.includes(squeezed(each)))
}
const full: CardModel = { ...modelOf({ serves: 8 }, PUBLISHED), sizes: MADE_UP_SIZES }
const NOTHING = { rows: [], note: [] }

describe('the card on paper', () => {
  it('with all its parts takes a second side, every word to be selected and searched, the same bytes each time', async () => {
    const [once, again] = [await printCard(full, 'A4'), await printCard(full, 'A4')]
    expect(sheetsIn(once)).toBe(2)
    expect(missing(once, wordsOf(full))).toEqual([])
    expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true)
  })
  it('stands on one side where little is said', async () => {
    const few = modelOf({ intro: 'Slow.', steps: ['seasoning', 'sear', 'pull'].map((id) => ({ id, text: ' ' })) })
    const short = {
      ...few,
      howToKnow: [],
      housekeeping: [],
      recipe: { ...few.recipe, storage: [], nutrition: NOTHING },
    }
    expect(sheetsIn(await printCard(short, 'Letter'))).toBe(1)
  })
  it('flows on where the recipe is long: no step is left out', async () => {
    const words = 'Baste it with what has gathered below, and listen to it while the smoke turns thin and blue. '
    const model = modelOf({ steps: long(40, words.repeat(5).trim()) })
    const bytes = await printCard(model, 'Letter')
    expect(sheetsIn(bytes)).toBeGreaterThan(3)
    expect(missing(bytes, wordsOf(model))).toEqual([])
  })
  it('small, it has needs, steps in short, temperatures, cautions and where the whole one is', async () => {
    const bytes = await printCard(full, 'small')
    expect(sheetsIn(bytes)).toBe(2)
    const firsts = full.steps.map(
      (step) =>
        step.runs
          .map((run) => run.text)
          .join('')
          .split(/[.](?=\s|$)/)[0] ?? '',
    )
    const wanted = [full.title, ...firsts, ...full.cautions, ...full.howToKnow.map(({ know }) => know)]
    expect(missing(bytes, [...wanted, ...full.ingredients.map(({ what }) => what), 'example.com/'])).toEqual([])
  })
})

describe('letters on paper', () => {
  it('accents, fractions, degrees and dashes come out as they were written', async () => {
    const [title, intro] = ['Gyulai őszi łosoś, jalapeño', 'Žluťoučký kůň, ğ ş ø ç é; ½ ¼ ¾ – 150 °C.']
    const model = modelOf({ title, intro, ingredients: [{ what: 'thirds of ⅓ ⅔', much: '1⅓ cup' }] })
    const bytes = await printCard(model, 'A4')
    expect(missing(bytes, [title, intro, 'thirds of 1/3 2/3', '1 1/3 cup'])).toEqual([])
  })
  it('a long address is broken over lines, and cut off only where it would fill the card', () => {
    const lines = addressLines('https://example.com/leg-of-lamb/over-charcoal?in=spring', 80)
    expect(lines.join('')).toBe('example.com/leg-of-lamb/over-charcoal?in=spring')
    expect(lines.length).toBeGreaterThan(1)
    expect(addressLines(`https://example.com/${'a'.repeat(300)}`, 80).at(-1)).toBe('…')
  })
})

describe('the card as values', () => {
  it('a number and its unit stand on one line', () => {
    const text = modelOf()
      .steps.flatMap((s) => s.runs.map((r) => r.text))
      .join('')
    expect(text).toContain('150\u00a0°C\u00a0/\u00a0300\u00a0°F')
    expect(text).not.toMatch(/\d °/)
  })
  it('a weight changes only between words', () => {
    for (const step of modelOf().steps)
      step.runs.slice(1).forEach((run, i) => {
        expect(`${step.runs[i]?.text.at(-1)}${run.text[0]}`).toMatch(/\s/)
      })
  })
  it('the foot counts what is printed, and owns up to what is printed against the check', () => {
    const own = modelOf({
      steps: [
        {
          id: 'x',
          text: 'It takes an hour in all.',
          override: [{ sentence: 'It takes an hour in all.', reason: 'It did on the day.' }],
        },
      ],
    })
    expect(own.foot).toMatch(
      /^Every time and temperature here was checked against the thermal model \(version made-up\): .*borne out/,
    )
    expect(own.foot).toContain('one contradicted and printed as the author’s own')
    const dropped = modelOf({ steps: [{ id: 'x', text: 'It takes an hour in all.' }] })
    expect(dropped.foot).not.toContain('contradicted')
    expect(JSON.stringify(dropped)).not.toContain('an hour in all')
  })
  it('amounts come in both unit systems, metric first', () => {
    const rows = modelOf({
      ingredients: [
        { what: 'mint', much: '40 g' },
        { what: 'sugar', much: '2 lb' },
        { what: 'garlic', much: '6 cloves' },
        { what: 'salt', much: '45 g (3 tbsp)' },
      ],
    }).ingredients
    expect(rows.map((r) => [r.much, r.other])).toEqual([
      ['3.2 kg', '7.1 lb'],
      ['40 g', '1½ oz'],
      ['905 g', '2 lb'],
      ['6 cloves', ''],
      ['45 g', '3 tbsp'],
    ])
  })
  it('a title that the check contradicts gives way to the cut', () => {
    expect(modelOf({ title: 'Lamb in an hour in all' }).title).toBe('Leg of lamb, bone in')
  })
})
