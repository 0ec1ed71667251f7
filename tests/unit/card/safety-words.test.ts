import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { buildCard, checkCard } from '../../../lib/card/card'
import { cautionsFor } from '../../../lib/card/cautions'
import { checkSafety } from '../../../lib/card/check-safety'
import { checkSentence } from '../../../lib/card/check-sentence'
import type { Caution, Claim } from '../../../lib/card/claim'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { parseShoot } from '../../../lib/plan/parse'
import { type Made, madeUpForecast } from './made-up-forecast'

const loin = JSON.parse(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8'))

/** The claims of one sentence on the pork loin's card. */
function findings(text: string) {
  const read = parseShoot({ ...loin, card: { steps: [{ id: 'x', text }] } })
  const [cook] = read.ok ? read.value.cooks : []
  if (!read.ok || !cook) throw new Error('the pork loin does not read')
  const forecasts = new Map([[cook.id, forecastCook(toCookPlan(read.value, cook), { seed: 1 })]])
  return checkCard(buildCard(read.value, forecasts), forecasts).filter((claim) => claim.step === 'x')
}

it('safety: a cook whose likely middle keeps the minimum is not called below it, and the sentence offered holds', () => {
  const [claim] = findings('Safe for everybody at 52 °C.')
  expect(claim?.finding).toBe('contradicted')
  expect(claim?.trueSentence).toMatch(/^In some cooks the coldest point is still below/)
  const again = findings(claim?.trueSentence ?? '')
  expect(again.length).toBeGreaterThan(0)
  expect(again.map((one) => one.finding)).not.toContain('contradicted')
})

it('safety: what is nowhere said to be cold is judged as left out, however long; nothing is called free of an allergen unmarked', () => {
  const card = { cook: 'x', animal: 'lamb', boneShare: 0, authority: 'US' } as const
  const found = [
    'Leave it at room temperature for 2 days.',
    'Salt it and leave it at room temperature for 14 hours.',
    'Thaw it at room temperature for a day.',
    'Leave it out of the fridge for at least 2 hours.',
    'Thaw it in the fridge for a day.',
    'It is gluten-free.',
  ].flatMap((said) => checkSentence(said, { card, forecast: madeUpForecast({}), step: 'x', before: null }))
  expect(found.map(({ says, finding }) => `${says} ${finding}`)).toEqual([
    'out contradicted',
    'out contradicted',
    'thaw-warm contradicted',
    'out contradicted',
    'thaw-fridge borne-out',
    'free-from cannot-be-checked',
  ])
})

it('what is taken out of the fridge before it cooks, and what is chilled for a time, is held against no other rule', () => {
  const card = { cook: 'x', animal: 'lamb', boneShare: 0, authority: 'US' } as const
  const found = [
    'Chill it 3 hours before slicing.',
    'Chill for 3 hours.',
    'Take it out of the fridge an hour before it goes on.',
    'Take it out of the fridge three hours before it goes on.',
    'Chill it within 3 hours.',
    'Chill what is left after 3 hours.',
    'Leave it for 3 hours before it is chilled.',
  ].flatMap((said) => checkSentence(said, { card, forecast: madeUpForecast({}), step: 'x', before: null }))
  expect(found.map(({ says, finding }) => `${says} ${finding}`)).toEqual([
    'storage cannot-be-checked',
    'storage cannot-be-checked',
    'out borne-out',
    'out contradicted',
    'out contradicted',
    'out contradicted',
    'out contradicted',
  ])
})

it('safety: free of what the card’s own ingredients contain is contradicted; free of the rest is nobody’s to say', () => {
  const of = { cook: 'x', animal: 'lamb', boneShare: 0, authority: 'EU' } as const
  const card = { ...of, recipe: { contains: ['wheat', 'milk'] } } as const
  const found = ['It is gluten-free.', 'Contains no dairy.', 'It is nut-free.'].flatMap((said) =>
    checkSentence(said, { card, forecast: madeUpForecast({}), step: 'x', before: null }),
  )
  expect(found.map(({ finding, found, trueSentence }) => [finding, found, trueSentence])).toEqual([
    ['contradicted', 'it contains wheat (gluten)', 'Contains wheat (gluten).'],
    ['contradicted', 'it contains milk', 'Contains milk.'],
    ['cannot-be-checked', '', null],
  ])
})

it('safety: no bird is called rare or medium, nor safe at a level below its minimum', () => {
  const card = { cook: 'x', animal: 'duck', boneShare: 0, authority: 'US' } as const
  const found = ['Serve it medium-rare.', 'It is safe at 60 °C.'].flatMap((said) =>
    checkSentence(said, { card, forecast: madeUpForecast({ cut: 'duck-whole' }), step: 'x', before: null }),
  )
  expect(found.map(({ kind, finding }) => `${kind} ${finding}`)).toEqual([
    'doneness contradicted',
    'safety contradicted',
  ])
})

/** The cautions of a shoot of one cook, by a forecast made up for it. */
function cautions(roast: Record<string, unknown>, made: Made) {
  const [plain] = loin.cooks
  const read = parseShoot({
    ...loin,
    cooks: [{ ...plain, roast: { ...plain.roast, ...roast } }],
  })
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  const id = read.value.cooks[0]?.id ?? ''
  return cautionsFor(read.value, new Map([[id, madeUpForecast(made)]]))
}
const sentence = (found: readonly Caution[], code: string) => found.find((c) => c.code === code)?.sentence

describe('cautions', () => {
  it('leftovers: how thick a slice may be is the cooling model’s, in both units', () => {
    const found = sentence(cautions({}, { cut: 'pork-loin-boneless' }), 'cooling')
    expect(found).toMatch(
      /one layer of slices up to 20 mm \/ 0\.8 in in a fridge, bagged pieces up to \d(?:\.5)? cm \/ [\d.]+ in in iced water/,
    )
  })
  it('rolled or pierced meat below the minimum is told apart', () => {
    const plain = sentence(
      cautions({ cut: 'pork-loin-boneless' }, { cut: 'pork-loin-boneless', slicedC: 55 }),
      'below-minimum',
    )
    const pierced = sentence(
      cautions({ cut: 'pork-loin-boneless', pierced: true }, { cut: 'pork-loin-boneless', slicedC: 55 }),
      'below-minimum',
    )
    expect(plain).not.toContain('inside')
    expect(pierced).toBe(`${plain} Rolled or pierced, it has inside what lay on its surface: rare is for nobody.`)
  })
  it('three spots are probed, the lowest counts, and the probe is wiped and sanitised', () => {
    expect(sentence(cautions({}, {}), 'probe-cross-contact')).toMatch(/three spots.*lowest counts.*sanitise/)
  })
})

describe('a claim that it is safe', () => {
  const safe: Claim = {
    id: 'x.safety',
    kind: 'safety',
    cook: 'hero',
    sentence: 'It is safe for everybody.',
    step: 'x',
    words: 'safe for everybody',
    start: 6,
    hedge: 'none',
    low: 0,
    high: 0,
    unit: 'word',
    says: 'safe',
  }
  /** Every member's coldest point at a level for its last 130 min. */
  function steady(tempC: number, cut: string) {
    const f = madeUpForecast({ cut, sear: false, roastMin: 300, spread: 0 })
    return { ...f, trace: { ...f.trace, coreC: f.trace.coreC.map((_, i) => (i % f.trace.count >= 16 ? tempC : 20)) } }
  }
  it('is borne out with care for beef that keeps the dwell table by its lowest row alone, and the reason says so', () => {
    const check = checkSafety(safe, steady(54.6, 'beef-rib-bone-in'), { animal: 'beef', authority: 'US' })
    expect(check.finding).toBe('borne-out-with-care')
    expect(check.reason).toContain('kept in 100 % of cooks (in 100 % by its lowest row alone)')
  })
  it('is contradicted for lamb that keeps only that table of beef', () => {
    const check = checkSafety(safe, steady(60, 'lamb-leg-bone-in'), { animal: 'lamb', authority: 'US' })
    expect(check.finding).toBe('contradicted')
  })
  it('is borne out with care at best for lamb past its minimum, and borne out for beef', () => {
    const finding = (cut: string, animal: 'lamb' | 'beef') =>
      checkSafety(safe, steady(68, cut), { animal, authority: 'US' }).finding
    expect(finding('lamb-leg-bone-in', 'lamb')).toBe('borne-out-with-care')
    expect(finding('beef-rib-bone-in', 'beef')).toBe('borne-out')
  })
})
