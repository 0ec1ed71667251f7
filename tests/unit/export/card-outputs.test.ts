import { describe, expect, it } from 'vitest'
import { cardMarkdown } from '../../../lib/export/card-markdown'
import { cardText } from '../../../lib/export/card-text'
import { isoDuration } from '../../../lib/export/iso-duration'
import { inScript, recipeJsonLd, stillNeeded } from '../../../lib/export/recipe-json-ld'
import { videoDescription } from '../../../lib/export/video-description'
import { seconds } from '../../../lib/units'
import { MADE_UP_SIZES, modelOf, PUBLISHED } from './made-up-card'
import { faultsOf, iso8601, lacking } from './vocabulary'

const CHAPTERS = [
  { startS: 41.6, endS: 200, title: 'Light the fire' },
  { startS: 200, endS: 610.2, title: 'Roast' },
  { startS: 610.2, endS: 900, title: 'Slice' },
  { startS: 800, endS: 900, title: 'After the end of the video' },
]
const CARD = {
  title: 'Jalapeño & thyme leg of lamb',
  serves: 8,
  ingredients: [
    { what: 'crème fraîche | thick', much: '40 g' },
    { what: 'garlic', much: '6 cloves' },
  ],
}
const asRead = (value: unknown): unknown => JSON.parse(JSON.stringify(value))
const whole = () => asRead(recipeJsonLd(modelOf(CARD, PUBLISHED), CHAPTERS)) as Record<string, unknown>

describe('the author’s note on keeping', () => {
  it('stands after the authority’s advice as theirs, and what a table contradicts does not print', () => {
    const kept = (storage: string) => modelOf({ ...CARD, storage }).recipe.storage.slice(3)
    expect(kept('Cold, it makes a fine sandwich')).toEqual(['The author’s own note: Cold, it makes a fine sandwich.'])
    expect(kept('It keeps 10 days in the fridge. Slice it cold.')).toEqual(['The author’s own note: Slice it cold.'])
  })
})

describe('the recipe as schema.org writes it', () => {
  it('holds only what the vocabulary knows, with and without what is published', () => {
    expect(faultsOf(whole())).toEqual([])
    expect(faultsOf(asRead(recipeJsonLd(modelOf(CARD))))).toEqual([])
  })
  it('has what search engines document as required and as recommended', () => {
    expect(lacking(whole(), 'required')).toEqual([])
    // Nobody has rated the recipe, and a made-up rating would be a lie.
    expect(lacking(whole(), 'recommended')).toEqual(['Recipe.aggregateRating'])
  })
  it.each<[string, unknown]>([
    ['an unknown property', { cookingTemperature: '150 °C' }],
    ['a range of times', { cookTime: 'PT2H/PT3H' }],
    ['a time in words', { totalTime: 'about 3 h' }],
    ['a picture that is no address', { image: 'lamb.jpg' }],
    ['a thing of the wrong kind', { author: { '@type': 'Clip', name: 'Zoë' } }],
    ['a day that does not exist', { datePublished: '2027-02-30' }],
  ])('the test itself sees %s', (_what, change) => {
    expect(faultsOf({ ...whole(), ...(change as object) })).toHaveLength(1)
  })
  it('names times as one figure each, servings as a number, and no diet', () => {
    const { prepTime, cookTime, totalTime, recipeYield, recipeInstructions, nutrition, ...rest } = whole()
    expect([prepTime, cookTime, totalTime, recipeYield]).toEqual([
      expect.stringMatching(/^PT\d+M$/),
      expect.stringMatching(/^PT2H\d+M$/),
      expect.stringMatching(/^PT[34]H(\d+M)?$/),
      '8',
    ])
    expect((recipeInstructions as { url: string }[])[1]?.url).toBe('https://example.com/leg-of-lamb#step-2')
    const figure = expect.stringMatching(/^\d+ m?g$/)
    expect(nutrition).toMatchObject({
      calories: expect.stringMatching(/^\d+ calories$/),
      fatContent: figure,
      sodiumContent: figure,
    })
    expect(rest).not.toHaveProperty('suitableForDiet')
  })
  it('gives no cooking time without a preparing time', () => {
    const model = modelOf(CARD)
    const cold = recipeJsonLd({ ...model, times: { ...model.times, prep: null } })
    expect([cold.prepTime, cold.cookTime, cold.totalTime]).toEqual([
      undefined,
      undefined,
      isoDuration(model.times.total ?? seconds(0)),
    ])
  })
  it('its clips are the chapters, in whole seconds and within the video', () => {
    const { hasPart } = whole().video as { hasPart: Record<string, unknown>[] }
    expect(hasPart.map(({ startOffset, endOffset, url }) => [startOffset, endOffset, url])).toEqual([
      [42, 200, 'https://example.com/film#t=42'],
      [200, 610, 'https://example.com/film#t=200'],
      [610, 750, 'https://example.com/film#t=610'],
    ])
  })
  it('says what a rich result still needs', () => {
    expect(stillNeeded(modelOf(CARD)).required).toEqual(['the picture'])
    const { uploaded: _, ...video } = PUBLISHED.video ?? {}
    expect(stillNeeded(modelOf(CARD, { ...PUBLISHED, video })).required).toEqual(['the day the video was put up'])
    expect(stillNeeded(modelOf(CARD, PUBLISHED))).toEqual({ required: [], helpful: [] })
  })
  it('cannot end the script it stands in', () => {
    const model = modelOf({ ...CARD, title: '</script><!-- lamb' }, PUBLISHED)
    const said = inScript(recipeJsonLd(model))
    expect(said).not.toMatch(/[<>&]/)
    expect(JSON.parse(said)).toEqual(asRead(recipeJsonLd(model)))
  })
  it.each(iso8601.filter(({ text }) => text !== 'PT90M'))('writes $seconds s as $text', ({ text, seconds: s }) => {
    expect(isoDuration(seconds(s))).toBe(text)
  })
})

describe('the card as text', () => {
  const model = { ...modelOf(CARD, PUBLISHED), sizes: MADE_UP_SIZES }
  const flat = (text: string) => text.replace(/^> |\s+/gm, ' ').replaceAll('\\', '')
  it.each([
    ['Markdown', cardMarkdown(model)],
    ['plain text', cardText(model)],
  ])('%s holds every step, caution and address', (_what, text) => {
    const held = flat(text).replace(/ +/g, ' ')
    const wanted = [
      ...model.steps.map((s) => s.runs.map((r) => r.text).join('')),
      ...model.cautions,
      ...model.housekeeping,
      ...model.howToKnow.map((row) => row.know),
      ...model.recipe.storage,
      ...model.recipe.nutrition.note,
      model.sizes?.note ?? '',
      model.foot,
      PUBLISHED.at ?? '',
    ]
    for (const words of wanted) expect(held).toContain(words.replaceAll('\u00a0', ' ').replace(/[!] /g, ' '))
    expect(text).not.toContain('\u00a0')
  })
  it('no line of the plain text is wider than 72 letters, whatever is written', () => {
    const long = modelOf({
      ...CARD,
      ingredients: [{ what: 'a marinade of '.repeat(8).trim(), much: '1 l, or as much as covers it' }],
    })
    for (const text of [cardText(model), cardText(long)])
      expect(text.split('\n').filter((line) => line.length > 72)).toEqual([])
  })
  it('Markdown keeps the author’s signs as signs', () => {
    const text = cardMarkdown(modelOf({ ...CARD, title: '# <b>Lamb</b> *slow*' }))
    expect(text).toContain('# \\# \\<b\\>Lamb\\</b\\> \\*slow\\*')
    expect(text).toContain('crème fraîche \\| thick')
  })
  it('what the check contradicts is in none of them', () => {
    const wrong = modelOf({ ...CARD, intro: 'It takes an hour in all.' }, PUBLISHED)
    const all = [cardMarkdown(wrong), cardText(wrong), videoDescription(wrong), inScript(recipeJsonLd(wrong))]
    for (const text of all) expect(text).not.toContain('an hour in all')
  })
})

describe('the words under the video', () => {
  it('list the chapters from 0:00, the card, the cautions and what was checked', () => {
    const model = modelOf(CARD, PUBLISHED)
    const text = videoDescription(model, CHAPTERS)
    expect(text).toContain('0:00 Beginning\n0:42 Light the fire\n3:20 Roast\n10:10 Slice\n\n')
    expect(text).not.toContain('After the end')
    for (const words of [PUBLISHED.at ?? '', model.foot, ...model.cautions.map((c) => `Caution: ${c}`)])
      expect(text).toContain(words.replaceAll('\u00a0', ' '))
  })
  it('say nothing of chapters where there are none', () => {
    expect(videoDescription(modelOf(CARD))).not.toMatch(/Chapters|0:00/)
  })
})
