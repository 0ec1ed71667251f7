import { describe, expect, it } from 'vitest'
import { COOKER_KINDS, type CookPlan } from '../../lib/model/cook'
import { type Cut, cutById } from '../../lib/model/cuts'
import { forecastCook } from '../../lib/model/forecast-cook'
import { windowOf } from '../../lib/model/quantiles'
import { celsius, frac, fromFahrenheit, kilograms, metres, metresPerSecond, minutes } from '../../lib/units'
import { CHART, type ChartSample, chartSample, ovenRun } from './measure'

/** Facts of the trade in fixtures/published/common-practice.json: spans, no source. */
const KG_PER_LB = 0.45359237
const FIRE = fromFahrenheit(325)
const CHARCOAL = COOKER_KINDS.filter((kind) => kind.endsWith('charcoal'))
const ribCook = (kind: CookPlan['cooker']['kind']): CookPlan => ({
  id: 'rib',
  roast: { cut: 'beef-rib-bone-in', mass: kilograms(9 * KG_PER_LB), start: celsius(4) },
  cooker: { kind },
  stages: [
    { do: 'preheat', at: FIRE },
    { do: 'roast', at: FIRE, until: { core: fromFahrenheit(110) }, turn: { at: 'half' }, probe: { at: 'turn' } },
    { do: 'rest', until: { after: minutes(15) } },
  ],
  surroundings: { air: celsius(15), wind: metresPerSecond(2), humidity: frac(0.6), altitude: metres(0) },
  lidOpenings: [],
})

describe('common practice (no source)', () => {
  it.each(CHARCOAL)('a 9 lb rib at 325 °F on %s comes to 110 °F at the probe within 20 % of 2 h 30 min', (kind) => {
    const { likely } = windowOf(forecastCook(ribCook(kind), { seed: 1 }).moments.pull as Float64Array)
    expect(likely).not.toBeNull()
    expect(Math.abs((likely as number) / (150 * 60) - 1)).toBeLessThanOrEqual(0.2)
  })
  it('a 3.5 kg butt at 115 °C comes to 92 °C in 8 to 14 h', () => {
    const cut = cutById('pork-shoulder-bone-in') as Cut
    const hours = ovenRun({ cut, massKg: 3.5, startC: 4, ovenC: 115, endC: 92 }).moments.pull / 3600
    expect(hours).toBeGreaterThan(8)
    expect(hours).toBeLessThan(14)
  })
})

/** Mean logarithm of the ratio of times between neighbouring endpoints of one series, in the table and in the model. */
function steps(toC: number) {
  const pairs = SAMPLES.flatMap((upper) => {
    if (Math.abs(upper.row.endpoint_C - toC) > 0.5) return []
    const lower = SAMPLES.findLast(
      (s) => seriesOf(s) === seriesOf(upper) && s.row.endpoint_C < upper.row.endpoint_C - 1,
    )
    return lower ? [{ lower, upper }] : []
  })
  const middle = ({ row }: ChartSample) => (row.minutes[0] + row.minutes[1]) / 2
  const mean = (of: (s: ChartSample) => number) =>
    pairs.reduce((sum, { lower, upper }) => sum + Math.log(of(upper) / of(lower)), 0) / pairs.length
  return { n: pairs.length, table: mean(middle), model: mean((s) => s.modelMin) }
}
const SAMPLES = CHART.map(chartSample)
const seriesOf = ({ row }: ChartSample) => [row.file, row.cut, row.part, row.mass_kg, row.oven_C].join()

describe('steps between endpoints of the timetables', () => {
  it.each([
    [71.1, 0.75],
    [76.7, 0.6],
  ])('up to %s °C are at least %s of the tables', (toC, share) => {
    const { n, table, model } = steps(toC)
    expect(n).toBeGreaterThanOrEqual(6)
    expect(model / table, `model ${model.toFixed(3)}, tables ${table.toFixed(3)}`).toBeGreaterThanOrEqual(share)
  })
})
