import { expect, it } from 'vitest'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { documentWarnings } from '../../../lib/plan/document-warnings'
import { valueAt } from '../../../lib/plan/edit'
import { parseShoot } from '../../../lib/plan/parse'

const stages = [
  { do: 'preheat', at: '150 °C' },
  { do: 'roast', at: '150 °C', until: { core: '46 °C' }, probe: { at: 'start', lead: '250 °C' } },
  { do: 'sear', at: '320 °C', until: { core: '52 °C' } },
  { do: 'rest', until: { after: '15 min' } },
]
const shootWith = (first: number) => ({
  emberslate: 1,
  title: 'Leg of lamb',
  date: '2027-05-15',
  zone: 'Europe/Dublin',
  place: { lat: 53.35, lon: -6.26 },
  cooks: [
    {
      id: 'hero',
      roast: { cut: 'lamb-leg-bone-in', mass: '3.2 kg', start: '4 °C' },
      cooker: { kind: 'kettle-charcoal' },
      stages: stages.slice(first),
      target: { doneness: 'well-done' },
    },
  ],
})

it.each([0, 1])('document warnings: a hot sear is told at the sear, with %i stages left out before it', (first) => {
  const document = shootWith(first)
  const parsed = parseShoot(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  const { value: shoot } = parsed
  const [cook] = shoot.cooks
  if (!cook) throw new Error('no cook')
  const forecasts = new Map([['hero', forecastCook(toCookPlan(shoot, cook), { seed: 1, members: 24 })]])
  const warnings = documentWarnings(shoot, forecasts)
  const sear = warnings.find((warning) => warning.code === 'probe-out-for-sear')
  expect(valueAt(document, sear?.path ?? '')).toMatchObject({ do: 'sear' })
  expect(warnings.map((warning) => warning.code)).toContain('target-disagrees')
})
