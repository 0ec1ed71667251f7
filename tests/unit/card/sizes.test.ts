import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { otherCook } from '../../../lib/card/other-cook'
import { pullWindow, sizeTable, thicknessesAbout } from '../../../lib/card/sizes'
import type { CookPlan } from '../../../lib/model/cook'
import { cutById } from '../../../lib/model/cuts'
import type { Forecast } from '../../../lib/model/forecast'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { typicalThicknessM } from '../../../lib/model/shape'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { parseShoot } from '../../../lib/plan/parse'
import type { Cook, Shoot } from '../../../lib/plan/shoot'
import { celsius, metres } from '../../../lib/units'
import { type ChartRow, published } from '../../reference/measure'
import { madeUpForecast } from './made-up-forecast'

function shootOf(change: object = {}, stages?: readonly object[]): Shoot {
  const full = JSON.parse(readFileSync('tests/fixtures/shoots/beef-rib.json', 'utf8'))
  const [cook] = full.cooks
  const parsed = parseShoot({ ...full, cooks: [{ ...cook, ...change, ...(stages ? { stages } : {}) }] })
  if (!parsed.ok) throw new Error(parsed.problems[0]?.sentence)
  return parsed.value
}
const lamb = shootOf({ roast: { cut: 'lamb-leg-bone-in', mass: '3.2 kg', start: '4 °C', thickness: '12 cm' } })
const cookOf = (shoot: Shoot) => shoot.cooks[0] as Cook

/** Its time goes with the thickness; above 13 cm it never comes there. */
function madeUp(plan: CookPlan): Forecast {
  const cm = (plan.roast.thickness ?? 0.12) * 100
  const made = madeUpForecast({ roastMin: cm * 10 })
  const never = made.moments.pull?.map(() => Number.POSITIVE_INFINITY) as Float64Array
  return { ...made, cook: plan, moments: { ...made.moments, ...(cm > 13.5 ? { pull: never } : {}) } }
}

describe('the table of other sizes', () => {
  it('has the filmed thickness among whole centimetres, none nearer than half a step', () => {
    expect(thicknessesAbout(metres(0.12))).toEqual([0.1, 0.11, 0.12, 0.13, 0.14])
    expect(thicknessesAbout(metres(0.114))).toEqual([0.09, 0.1, 0.114, 0.12, 0.13])
    expect(thicknessesAbout(metres(0.03))).toEqual([0.02, 0.025, 0.03, 0.035, 0.04])
  })
  it('has the card’s cooker first and two that readers own, each cell early to late, and says where it does not get there', () => {
    const table = sizeTable(lamb, madeUp)
    expect(table.columns.map((c) => c.words)).toEqual(['kettle, charcoal', 'oven', 'convection oven'])
    expect(table.rows.map((row) => row.thick)).toEqual([
      '10 cm / 4 in',
      '11 cm / 4¼ in',
      '12 cm / 4¾ in',
      '13 cm / 5 in',
      '14 cm / 5½ in',
    ])
    expect(table.rows.map((row) => row.cells[0]?.words)).toEqual([
      '1 h 20 to 1 h 55',
      '1 h 30 to 2 h 05',
      '1 h 40 to 2 h 15',
      '1 h 50 to 2 h 25',
      'does not get there',
    ])
    expect(table.rows.flatMap((row) => row.cells.filter((cell) => cell.filmed))).toHaveLength(1)
  })
  it('gives every cell the forecast of its own cook: same function, seed and members', () => {
    const fresh = (plan: CookPlan) => forecastCook(plan, { seed: 1, members: 12 })
    // One cell is enough to try: all go by the same function.
    const tried = ({ roast, cooker }: CookPlan) => roast.thickness === 0.11 && cooker.kind === 'oven'
    const table = sizeTable(lamb, (plan) => (tried(plan) ? fresh(plan) : madeUp(plan)))
    const pull = celsius((110 - 32) / 1.8)
    const oven = otherCook(cookOf(lamb), pull, { thickness: metres(0.11), cooker: 'oven' })
    expect(table.rows[1]?.cells[1]?.window).toEqual(pullWindow(fresh(toCookPlan(lamb, oven))))
    expect(table.rows[2]?.cells[0]?.window).toEqual(pullWindow(madeUp(toCookPlan(lamb, cookOf(lamb)))))
  })
  it('keeps no heat that the other cooker has not, and no limit or fuel of the filmed size', () => {
    const oven = otherCook(cookOf(lamb), celsius(43), { cooker: 'oven', thickness: metres(0.1) })
    expect(oven.stages.find((s) => s.do === 'sear')?.at).toBe(250)
    const limited = shootOf({ cooker: { kind: 'kettle-charcoal', fuel: '2 kg' } })
    expect(otherCook(cookOf(limited), celsius(43), { thickness: metres(0.1) }).cooker).toEqual({
      kind: 'kettle-charcoal',
    })
  })
})

describe('the table beside the published roasting times of whole turkeys, n 5', () => {
  const rows = published<{ rows: ChartRow[] }>('roasting-times').rows.filter(
    (row) =>
      row.cut === 'turkey-whole' && row.oven_C === 162.8 && row.role !== 'doubtful' && row.role !== 'contradicted',
  )
  const middle = rows.find((row) => row.mass_kg === 7.257) as ChartRow
  const shoot = shootOf(
    {
      roast: { cut: 'turkey-whole', mass: `${middle.mass_kg} kg`, start: `${middle.start_C} °C` },
      cooker: { kind: 'oven' },
    },
    [
      { do: 'preheat', at: `${middle.oven_C} °C` },
      { do: 'roast', at: `${middle.oven_C} °C`, until: { core: `${middle.endpoint_C} °C` }, probe: { at: 'start' } },
      { do: 'rest', until: { after: '20 min' } },
    ],
  )
  const inOven = (plan: CookPlan) => plan.cooker.kind === 'oven'
  const table = sizeTable(shoot, (plan) => (inOven(plan) ? forecastCook(plan, { seed: 1, members: 24 }) : madeUp(plan)))
  const cut = cutById('turkey-whole')
  it.each(rows.map((row) => [row.mass_kg, row] as const))('%s kg: its window meets the chart’s', (kg, row) => {
    const thick = typicalThicknessM(cut as NonNullable<typeof cut>, kg)
    const near = table.rows.reduce((a, b) => (Math.abs(b.thickness - thick) < Math.abs(a.thickness - thick) ? b : a))
    expect(Math.abs(near.thickness - thick)).toBeLessThan(0.0101)
    const { early, late } = near.cells[0]?.window ?? {}
    expect((early ?? Number.NaN) / 60).toBeLessThanOrEqual(row.minutes[1])
    expect((late ?? Number.NaN) / 60).toBeGreaterThanOrEqual(row.minutes[0])
  })
})
