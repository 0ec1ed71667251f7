import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { buildCard, checkCard } from '../../../lib/card/card'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { parseShoot } from '../../../lib/plan/parse'

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
