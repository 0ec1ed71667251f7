import { expect, test } from 'vitest'
import { factsOf } from '../../../app/workbench'
import { buildCard } from '../../../lib/card/card'
import { drawCutFace } from '../../../lib/export/cut-face'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { safetyOf } from '../../../lib/model/safety-summary'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { documentWarnings } from '../../../lib/plan/document-warnings'
import { lambWith, read } from '../plan/shoots'

const custom = { name: 'saddle of hogget', animal: 'lamb', shape: 'oval', bone: '20 %' }
const shoot = read(
  lambWith({
    '/cooks/0/roast/cut': 'custom',
    '/cooks/0/roast/custom': custom,
    '/cooks/0/roast/thickness': '9 cm',
    '/card': undefined,
  }),
)
const cook = shoot.cooks[0]
if (!cook) throw new RangeError('no cook')
const forecast = forecastCook(toCookPlan(shoot, cook), { seed: 1, members: 24 })
const forecasts = new Map([[cook.id, forecast]])

test('a cut of one’s own is forecast like any other', () => {
  const pull = forecast.moments.pull as Float64Array
  expect(pull.every((timeS) => timeS > 1200)).toBe(true)
  expect(documentWarnings(shoot, forecasts)).toBeInstanceOf(Array)
  expect(drawCutFace(forecast).marks.length).toBeGreaterThan(5)
})
test('the card and the head of every page call it by its own name, and its animal sets the minimum', () => {
  const card = buildCard(shoot, forecasts)
  expect(card.cut).toBe('saddle of hogget')
  expect(card.animal).toBe('lamb')
  expect(card.title.text.toLowerCase()).toContain('saddle of hogget')
  expect(factsOf(shoot, 'metric')).toContain('saddle of hogget, 3.2 kg')
  expect(safetyOf(forecast).minimum.tempC).toBeCloseTo(62.8, 1)
})
