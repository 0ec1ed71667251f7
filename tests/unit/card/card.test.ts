import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { buildCard, type Card, checkCard, mergeSteps } from '../../../lib/card/card'
import { OWN_STATEMENT, printableSteps, printedText } from '../../../lib/card/printable-steps'
import type { Forecast } from '../../../lib/model/forecast'
import { parseShoot } from '../../../lib/plan/parse'
import type { Shoot } from '../../../lib/plan/shoot'
import { madeUpForecast } from './made-up-forecast'

type Document = Record<string, unknown>
const lamb = JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8')) as Document
const shootWith = (change: Document): Shoot => {
  const read = parseShoot({ ...lamb, card: undefined, ...change })
  if (!read.ok) throw new RangeError(read.problems.map((p) => `${p.pointer}: ${p.sentence}`).join('\n'))
  return read.value
}
const forecasts = (forecast: Forecast = madeUpForecast()) => new Map([['hero', forecast]])
const cardOf = (card: Document, given = forecasts()) => {
  const built = buildCard(shootWith({ card }), given)
  return { card: built, checked: checkCard(built, given) }
}
const printedOf = (card: Card, checked: ReturnType<typeof checkCard>) => printableSteps(card, checked).map(printedText)

describe('build card', () => {
  it('every sentence it writes is borne out, in every plan', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const given = forecasts(
        madeUpForecast({ roastMin: 60 + seed * 11, sear: seed % 3 > 0, pull: 44 + seed, restMin: 5 + seed }, seed),
      )
      const card = buildCard(shootWith({}), given)
      const bad = checkCard(card, given).filter((c) => c.finding !== 'borne-out' && c.finding !== 'borne-out-with-care')
      expect(bad.map((c) => `${c.sentence} ${c.words}: ${c.finding} ${c.found}`)).toEqual([])
    }
  })

  it('says every temperature in both unit systems', () => {
    const { card } = cardOf({})
    for (const step of card.steps) {
      const metric = step.text.match(/°C/g)?.length ?? 0
      expect(step.text.match(/°F/g)?.length ?? 0, step.text).toBe(metric)
    }
    expect(card.steps.map((s) => s.id)).toEqual(['season', 'fire', 'roast', 'pull', 'sear', 'rest', 'slice'])
  })

  it('a plan without a sear has no sear step and takes the meat off at the pull', () => {
    const given = forecasts(madeUpForecast({ sear: false, cooker: 'oven' }))
    const card = buildCard(shootWith({}), given)
    expect(card.steps.map((s) => s.id)).not.toContain('sear')
    expect(card.steps.find((s) => s.id === 'pull')?.text).toContain('take it off the heat')
    expect(card.timeLine.map((p) => p.id)).toEqual(['warm-up', 'roast', 'rest'])
  })

  it('the line of the day holds the likely times', () => {
    const { card } = cardOf({})
    const total = card.timeLine.reduce((sum, part) => sum + part.likely, 0)
    expect(total / 60).toBeGreaterThan(200)
    expect(total / 60).toBeLessThan(280)
  })
})

describe('the author’s own words', () => {
  const step = (id: string, text = id) => ({ id, text, by: 'plan' as const, override: [] })
  it('take the place of the written step, stand after the one before, or leave it out', () => {
    const merged = mergeSteps(
      [step('fire'), step('roast'), step('rest')],
      [
        { id: 'soak', text: 'Soak the chips.' },
        { id: 'roast', text: 'My roast.' },
        { id: 'baste', text: 'Baste it.' },
        { id: 'rest', text: '' },
      ],
    )
    expect(merged.map((s) => [s.id, s.by])).toEqual([
      ['soak', 'author'],
      ['fire', 'plan'],
      ['roast', 'author'],
      ['baste', 'author'],
    ])
  })

  it('a contradicted sentence does not print; the true ones beside it do', () => {
    const { card, checked } = cardOf({
      steps: [{ id: 'rest', text: 'Rest it for 20 minutes. It is pink from edge to edge.' }],
    })
    expect(printedOf(card, checked)).toContain('Rest it for 20 minutes.')
    expect(printedOf(card, checked).join(' ')).not.toContain('edge to edge')
  })

  it('with a reason it prints as the author’s own statement; not with an empty one, nor with one for another sentence', () => {
    const text = 'It is pink from edge to edge.'
    const own = cardOf({
      steps: [{ id: 'rest', text, override: [{ sentence: text, reason: 'So it looked on the day.' }] }],
    })
    expect(printedOf(own.card, own.checked)).toContain(`${OWN_STATEMENT} ${text}`)
    const step = { id: 'rest', text, override: [{ sentence: text, reason: '' }] }
    expect(() => cardOf({ steps: [step] })).toThrow('The reason is empty')
    const other = cardOf({ steps: [{ ...step, override: [{ sentence: 'Another one.', reason: 'So it looked.' }] }] })
    expect(printedOf(other.card, other.checked).join(' ')).not.toContain('edge to edge')
  })

  it('a contradicted title or intro does not print either', () => {
    const { card, checked } = cardOf({
      title: 'Leg of lamb in an hour in all',
      intro: 'Ready in 30 minutes in all. Good hot.',
    })
    expect(checked.filter((c) => c.finding === 'contradicted').map((c) => c.id)).toEqual([
      'title.total-time',
      'intro.total-time',
    ])
    expect(card.title.by).toBe('author')
  })

  it('claims of one card have ids of their own', () => {
    const { checked } = cardOf({
      serves: 8,
      steps: [{ id: 'rest', text: 'Rest 20 minutes. Rest 25 minutes. Rest 30 minutes.' }],
    })
    const ids = checked.map((c) => c.id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids).toContain('rest.rest-time.3')
  })
})

describe('three sentences told what is true instead', () => {
  const told = (text: string) => cardOf({ steps: [{ id: 'x', text }] }).checked.find((c) => c.step === 'x')
  it('"safe for everybody at 52 °C"', () => {
    const claim = told('It is safe for everybody at 52 °C.')
    expect(claim?.finding).toBe('contradicted')
    expect(claim?.found).toContain('63 °C / 145 °F, then 3 minutes')
    expect(claim?.reason).toContain('6.5')
    expect(claim?.source).toBe('fsis-safe-minimum')
    expect(claim?.trueSentence).toContain('not for guests at risk')
  })
  it('"edge to edge pink"', () => {
    const claim = told('The slice is edge to edge pink.')
    expect(claim).toMatchObject({ finding: 'contradicted', found: '60 % of the face stayed below 65 °C' })
    expect(claim?.trueSentence).toMatch(/^Pink for all but the outer \d+ mm\.$/)
  })
  it('"an hour in all"', () => {
    const claim = told('It takes an hour in all.')
    expect(claim?.finding).toBe('contradicted')
    expect(claim?.figure?.likely).toBeGreaterThan(3 * 3600)
    expect(claim?.trueSentence).toMatch(/^It takes 3 h \d\d to 4 h \d\d in all\.$/)
  })
  it('a sentence is cut at a full stop and not inside a number or before a small letter', () => {
    const { checked } = cardOf({ steps: [{ id: 'x', text: 'Take it off at 52 °C. Rest it for 1.5 h. Good.' }] })
    expect(checked.filter((c) => c.step === 'x').map((c) => c.sentence)).toEqual([
      'Take it off at 52 °C.',
      'Rest it for 1.5 h.',
    ])
  })
})

describe('cautions', () => {
  const codes = (change: Document, forecast = madeUpForecast()) =>
    buildCard(shootWith(change), forecasts(forecast)).cautions.map((c) => c.code)
  const oven = (cut: string): Document => ({
    cooks: [
      {
        id: 'hero',
        roast: { cut, mass: '5 kg', start: '4 °C' },
        cooker: { kind: 'oven' },
        stages: [{ do: 'roast', at: '165 °C', until: { core: '74 °C' } }],
      },
    ],
    tasks: [],
    shots: [],
  })
  it('charcoal, sear and a low middle each bring theirs', () => {
    expect(codes({})).toEqual(
      expect.arrayContaining([
        'below-minimum',
        'carbon-monoxide',
        'choked-lid',
        'fat-flare',
        'ash',
        'cooling',
        'defer',
      ]),
    )
  })
  it('an oven roast past the minimum brings none of them', () => {
    const made = madeUpForecast({ sear: false, slicedC: 70, cooker: 'oven', cut: 'beef-rib-bone-in' })
    expect(codes(oven('beef-rib-bone-in'), made)).toEqual(['cooling', 'defer'])
  })
  it('poultry is measured by its own minimum', () => {
    const made = madeUpForecast({ sear: false, slicedC: 70, cooker: 'oven', cut: 'turkey-whole' })
    expect(codes(oven('turkey-whole'), made)).toContain('poultry-minimum')
  })
  it('an authority whose table we lack is told, and the reader sent to it', () => {
    const card = buildCard(shootWith({ authority: 'IE' }), forecasts())
    expect(card.cautions.find((c) => c.code === 'defer')?.sentence).toContain('We hold no table for IE')
  })
})
