import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { howToKnow } from '../../../lib/card/how-to-know'
import { inOneSystem } from '../../../lib/card/one-system'
import { ownPlan } from '../../../lib/card/own-plan'
import { basisOf, donenessChoices, type Filled } from '../../../lib/card/own-wish'
import type { CookPlan } from '../../../lib/model/cook'
import type { Forecast } from '../../../lib/model/forecast'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { parseShoot } from '../../../lib/plan/parse'
import type { Cook, Shoot } from '../../../lib/plan/shoot'
import { madeUpForecast } from './made-up-forecast'

function shootOf(file: string): Shoot {
  const parsed = parseShoot(JSON.parse(readFileSync(`tests/fixtures/shoots/${file}.json`, 'utf8')))
  if (!parsed.ok) throw new Error(parsed.problems[0]?.sentence)
  return parsed.value
}
/** Sliced so much above the end of its last heat, at its coldest as at the probe. */
const RISE_K = 6
function madeUp(plan: CookPlan): Forecast {
  const ends = plan.stages.flatMap((s) =>
    (s.do === 'roast' || s.do === 'sear') && 'core' in s.until ? [s.until.core] : [],
  )
  const made = madeUpForecast({
    slicedC: (ends.at(-1) as number) + RISE_K,
    sear: plan.stages.some((s) => s.do === 'sear'),
  })
  const { startS, stepS, count, coreC } = made.trace
  // It holds what it came to, so that a minimum with a rest can be kept.
  const held = coreC.map((c, i) =>
    startS + (i % count) * stepS > 9000 ? Math.max(c, ends.at(-1) as number) + RISE_K : c,
  )
  return { ...made, cook: plan, trace: { ...made.trace, coreC: held } }
}
const lamb = shootOf('full')
const turkey = shootOf('turkey-oven')
const basis = (shoot: Shoot) => basisOf(shoot, madeUp(toCookPlan(shoot, shoot.cooks[0] as Cook)))
const blank: Filled = {
  thickness: '11 cm',
  weight: '',
  start: 'fridge',
  cooker: 'oven',
  done: 'card',
  core: '',
  serve: '',
}
const planned = (shoot: Shoot, change: Partial<Filled>) => {
  const answer = ownPlan(basis(shoot), { ...blank, ...change }, madeUp)
  if (!answer.ok) throw new Error(answer.problems[0]?.sentence)
  return answer.value
}
const refused = (shoot: Shoot, change: Partial<Filled>) => {
  const answer = ownPlan(basis(shoot), { ...blank, ...change }, madeUp)
  return answer.ok ? [] : answer.problems
}

describe('a reader’s own roast', () => {
  it('is told of the card’s cook and of nobody and nowhere', () => {
    const told = JSON.stringify(basis(lamb))
    for (const person of lamb.people ?? []) expect(told).not.toContain(`"${person.id}"`)
    expect(told).not.toContain('garden')
    expect(told).not.toContain('53.35')
    expect(told).toContain('lamb-leg-bone-in')
  })
  it('is pulled as on the card unless another doneness is asked for, and then where that comes of it', () => {
    expect(planned(lamb, {}).pull).toMatch(/^Pull it when the probe reads 46 °C \/ 115 °F: likely /)
    // The filmed one is sliced at about 60 °C at the probe, pulled at 46 °C.
    expect(planned(lamb, { done: 'medium' }).pull).toMatch(/^Pull it when the probe reads 47 °C/)
    expect(planned(lamb, { done: 'core', core: '66 °C' }).pull).toMatch(/^Pull it when the probe reads 52 °C/)
  })
  it('is ready in 19 cooks of 20 by the time it is served, counted back over midnight', () => {
    const evening = planned(lamb, { serve: '19:30' })
    expect(evening.steps.map((s) => s.id)).toEqual([
      'fire-lit',
      'meat-on',
      'turn',
      'pull',
      'sear-start',
      'off-heat',
      'first-slice',
    ])
    expect(evening.steps.at(-1)?.when).toMatch(/ to 19:(?:2\d|30)$/)
    const early = planned(lamb, { serve: '01:00' })
    expect(early.steps[0]?.when).toMatch(/^2\d:\d\d the day before$/)
  })
  it('of poultry is never offered below the minimum: pulled later until its coldest point keeps it', () => {
    const low = shootOf('turkey-oven')
    const roast = low.cooks[0]?.stages.find((s) => s.do === 'roast')
    if (roast?.do !== 'roast') throw new Error('no roast')
    const early: Shoot = {
      ...low,
      cooks: [{ ...(low.cooks[0] as Cook), stages: [{ ...roast, until: { core: 60 as never } }] }],
    }
    const pull = Number(/reads (\d+) °C/.exec(planned(early, { thickness: '13 cm' }).pull)?.[1])
    expect(pull).toBeGreaterThanOrEqual(74 - RISE_K)
    expect(donenessChoices(basis(turkey)).map(([value]) => value)).toEqual(['card', 'minimum', 'core'])
    expect(refused(turkey, { thickness: '13 cm', done: 'core', core: '60 °C' })[0]).toEqual({
      pointer: '/core',
      sentence: '60 °C is below the authority’s minimum for poultry. Write one from 74 °C / 165 °F to 97 °C / 207 °F.',
    })
  })
  it('of poultry in a cooker too cool for the minimum is refused, not planned below it', () => {
    const low = shootOf('turkey-oven')
    const roast = low.cooks[0]?.stages.find((s) => s.do === 'roast')
    if (roast?.do !== 'roast') throw new Error('no roast')
    const cool: Shoot = {
      ...low,
      cooks: [{ ...(low.cooks[0] as Cook), stages: [{ ...roast, at: 72 as never, until: { core: 60 as never } }] }],
    }
    expect(refused(cool, { thickness: '13 cm' })).toMatchObject([
      { pointer: '/cooker', sentence: expect.stringMatching(/minimum in 19 cooks of 20/) },
    ])
  })
  it.each([
    [{ thickness: '' }, '/thickness', /^A length is missing here/],
    [{ thickness: '11' }, '/thickness', /^11 what\? Write "11 cm"/],
    [{ thickness: '40 cm' }, '/thickness', /^40 cm is another kind of roast: this card holds from 6 cm/],
    [{ weight: '90 kg' }, '/weight', /too large a roast/],
    [{ thickness: '19 cm', weight: '0.8 kg' }, '/thickness', /too thick/],
    [{ done: 'core', core: '20 °C' }, '/core', /too cold to serve/],
    [{ done: 'core', core: '140 °C' }, '/core', /more than the middle comes to/],
    [{ serve: '25:00' }, '/serve', /"25:00" is not a time of day/],
  ] as const)('says in one sentence at its field what is wrong with %j', (change, pointer, sentence) => {
    const [first, ...more] = refused(lamb, change)
    expect(more).toEqual([])
    expect(first?.pointer).toBe(pointer)
    expect(first?.sentence).toMatch(sentence)
  })
  it('is told in the reader’s own unit system', () => {
    expect(inOneSystem('It reads 56 to 59 °C / 133 to 138 °F, 11 cm / 4¼ in thick.', 'us')).toBe(
      'It reads 133 to 138 °F, 4¼ in thick.',
    )
    expect(inOneSystem('It reads 56 to 59 °C / 133 to 138 °F, 11 cm / 4¼ in thick.', 'metric')).toBe(
      'It reads 56 to 59 °C, 11 cm thick.',
    )
  })
})

describe('how you know', () => {
  it('names a temperature for every stage, the minutes only beside it', () => {
    const rows = howToKnow({ animal: 'lamb', authority: 'US' }, madeUpForecast())
    expect(rows.map((row) => row.id)).toEqual(['steady', 'turn', 'pull', 'sear', 'off', 'rest', 'slice'])
    expect(rows.filter((row) => !/ °C \/ .* °F/.test(row.know))).toEqual([])
    expect(rows.find((row) => row.id === 'pull')?.know).toBe('The probe reads 46 °C / 115 °F in the thickest part.')
    expect(rows.find((row) => row.id === 'steady')?.know).toContain('150 °C / 300 °F')
  })
  it('ends the rest of a bird by the minimum and not by a clock', () => {
    const rows = howToKnow({ animal: 'turkey', authority: 'US' }, madeUpForecast({ cut: 'turkey-whole', slicedC: 78 }))
    expect(rows.find((row) => row.id === 'rest')?.know).toBe(
      'The coldest of thighs and breast reads 74 °C / 165 °F or more; not before.',
    )
  })
})
