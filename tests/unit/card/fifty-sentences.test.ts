import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkSentence } from '../../../lib/card/check-sentence'
import { cookFacts } from '../../../lib/log/cook-facts'
import { foldLog } from '../../../lib/log/fold'
import { cutById } from '../../../lib/model/cuts'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { SOURCES } from '../../../lib/model/sources'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { parseShoot } from '../../../lib/plan/parse'
import { logOf } from '../log/lines'
import { FILMED, FILMED_SENTENCES, SENTENCES } from './fifty-sentences'

const read = parseShoot(JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8')))
if (!read.ok) throw new RangeError('the demo does not read')
const [cook] = read.value.cooks
const cut = cutById(cook?.roast.cut ?? '')
if (!cook || !cut) throw new RangeError('no leg of lamb')
const forecast = forecastCook(toCookPlan(read.value, cook), { seed: 1, members: 64 })
const card = { cook: cook.id, animal: cut.animal, boneShare: cut.boneShare, authority: 'US' }
const filmed = cookFacts(foldLog(logOf(...FILMED)), cook.id)

const check = (sentence: string, facts: typeof filmed = null) =>
  checkSentence(sentence, { card, forecast, facts, step: 's', before: null })
const told = (claims: ReturnType<typeof check>) => claims.map((c) => `${c.kind}: ${c.finding}`).join(', ')

describe('sentences as a cook would write them', () => {
  it('are fifty and more', () => expect(SENTENCES.length + FILMED_SENTENCES.length).toBeGreaterThanOrEqual(50))
  it.each(SENTENCES)('"%s" %s', (sentence, findings) => expect(told(check(sentence))).toBe(findings))
  it.each(FILMED_SENTENCES)('filmed: "%s" %s', (sentence, findings) => {
    expect(told(check(sentence, filmed))).toBe(findings)
  })

  it('a finding names who judged it, a table is one we know, and a false sentence is told what is true', () => {
    for (const claim of [
      ...SENTENCES.flatMap(([s]) => check(s)),
      ...FILMED_SENTENCES.flatMap(([s]) => check(s, filmed)),
    ]) {
      if (claim.finding !== 'cannot-be-checked') expect(claim.by, claim.sentence).toMatch(/plan|model|log|table/)
      if (claim.by === 'table') expect(Object.keys(SOURCES)).toContain(claim.source)
      if (claim.finding !== 'contradicted') continue
      const again = check(claim.trueSentence ?? '', claim.by === 'log' ? filmed : null)
      expect(again.filter((c) => c.finding === 'contradicted').map((c) => `${c.sentence} ${c.found}`)).toEqual([])
    }
  })
  it('a gas mark is told as a temperature, and a setting that was not kept outranks the plan', () => {
    expect(check('Roast it in a kettle at gas mark 4.')[0]?.reason).toMatch(/^Gas mark 4 is 177 °C \/ 350 °F by/)
    expect(check('Turn it after 100 minutes.', filmed)[0]?.reason).toMatch(/^The filmed cook was not so/)
  })
  it('what is praise is the author’s opinion and nobody’s to check', () => {
    expect(check('The juiciest leg you will ever eat.')[0]).toMatchObject({
      by: 'author',
      source: 'the author’s opinion',
    })
  })
})
