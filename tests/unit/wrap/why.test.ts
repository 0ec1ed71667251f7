import { describe, expect, it } from 'vitest'
import type { CookPlan } from '../../../lib/model/cook'
import type { Forecast } from '../../../lib/model/forecast'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { MOMENT_IDS, type MomentId } from '../../../lib/model/moment-ids'
import { medianOf } from '../../../lib/model/quantiles'
import type { Reading } from '../../../lib/model/readings'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import type { Cook } from '../../../lib/plan/shoot'
import { celsius, type Instant, instant, kelvins, later, minutes, type Seconds, seconds } from '../../../lib/units'
import { withLevel, withLids, withPull } from '../../../lib/wrap/as-it-was'
import { type Cause, type Why, whyOf } from '../../../lib/wrap/why'
import { whySentences } from '../../../lib/wrap/why-words'
import { lamb, read } from '../plan/shoots'

const shoot = read(lamb())
const plan = toCookPlan(shoot, shoot.cooks[0] as Cook)
const cooked = new Map<string, Forecast>()
function cook(of: CookPlan): Forecast {
  const key = JSON.stringify(of)
  const made = cooked.get(key) ?? forecastCook(of, { seed: 1, members: 48, kernel: 'simd' })
  cooked.set(key, made)
  return made
}
const planned = cook(plan)
const PLANNED_ON = instant(Date.parse('2027-05-15T16:00:00Z'))
type Times = Partial<Record<MomentId, Instant>>
const timesOf = ({ moments }: ReturnType<typeof cook>, on: Instant): Times =>
  Object.fromEntries(
    MOMENT_IDS.flatMap((id) => {
      const row = moments[id]
      return row && id !== 'carryover-peak' ? [[id, later(on, seconds(medianOf(row)))]] : []
    }),
  )
const likely = timesOf(planned, PLANNED_ON)
const morning = Object.fromEntries(Object.entries(likely).map(([id, at]) => [id, { early: at, likely: at, late: at }]))

/** A day that went as the likely cook of a plan that the morning did not know, with what its sensor in the cooker read. */
function dayOf(truth: CookPlan, more: Partial<Parameters<typeof whyOf>[0]> = {}, lateS: Seconds = seconds(0)): Why {
  const lived = cook(truth)
  const { startS, stepS, count, cookerC } = lived.trace
  const readings = Array.from({ length: 60 }, (_, i): Reading => {
    const at = Math.round((i * 120 - startS) / stepS)
    const row = Float64Array.from({ length: lived.members }, (_, m) => cookerC[m * count + at] as number)
    return { t: seconds(i * 120), sensor: 'cooker', tempC: celsius(medianOf(row)) }
  })
  const happened = timesOf(lived, later(PLANNED_ON, lateS))
  const why = whyOf({ plan, morning, happened, readings, lids: [], pulledAt: null, cook, ...more })
  if (!why) throw new Error('No why')
  return why
}
const causeOf = <W extends Cause['what']>({ causes }: Why, what: W) =>
  causes.find((cause): cause is Extract<Cause, { what: W }> => cause.what === what)
/** By how much the truth's pull is later than the plan's. */
const pullByS = (truth: CookPlan) =>
  medianOf(cook(truth).moments.pull as Float64Array) - medianOf(planned.moments.pull as Float64Array)
const min = (s: number | undefined) => (s ?? Number.NaN) / 60

describe('why a cook did not end when the plan said', () => {
  it('finds a cooker under its dial, by as much as it held the roast up', () => {
    const truth = withLevel(plan, kelvins(-9))
    const why = dayOf(truth)
    const cooker = causeOf(why, 'cooker')
    expect(cooker?.offK).toBeCloseTo(-9, 0)
    expect(Math.abs((cooker?.held ?? 0) - 141)).toBeLessThan(1)
    expect(Math.abs(min(cooker?.byS) - min(pullByS(truth)))).toBeLessThan(1)
    expect(min(cooker?.byS)).toBeGreaterThan(4)
    expect(Math.abs(min(why.unexplainedS))).toBeLessThan(1.5)
    expect(whySentences(why, 'kettle-charcoal', 'metric')[0]).toMatch(
      /^At the grate it held 14[12] °C, not 150: \w+ minutes\.$/,
    )
  })
  it('finds a hotter cooker as time won', () => {
    const cooker = causeOf(dayOf(withLevel(plan, kelvins(8))), 'cooker')
    expect(min(cooker?.byS)).toBeLessThan(-3)
  })
  it('finds a lid that stood open longer than planned', () => {
    const lids = [
      { at: minutes(30), open: minutes(8) },
      { at: minutes(80), open: minutes(8) },
    ]
    const truth = withLids(plan, lids)
    const lid = causeOf(dayOf(truth, { lids, readings: [] }), 'lid')
    expect(lid && lid.open - lid.asked).toBe(16 * 60)
    expect(Math.abs(min(lid?.byS) - min(pullByS(truth)))).toBeLessThan(0.5)
    expect(min(lid?.byS)).toBeGreaterThan(1)
  })
  it('finds a roast that was pulled hotter than planned', () => {
    const truth = withPull(plan, celsius(50))
    const pulled = causeOf(dayOf(truth, { pulledAt: celsius(50), readings: [] }), 'pulled')
    expect(Math.abs(min(pulled?.byS) - min(pullByS(truth)))).toBeLessThan(0.5)
  })
  it('takes late meat, a longer sear and a longer rest from the marks, to the second', () => {
    const on = later(PLANNED_ON, minutes(7))
    const shifted = timesOf(planned, on)
    const off = later(shifted['off-heat'] as Instant, minutes(4))
    const happened = {
      ...shifted,
      'fire-lit': likely['fire-lit'] as Instant,
      'off-heat': off,
      'first-slice': later(off, minutes(25)),
    }
    const why = dayOf(plan, { happened, readings: [] })
    const restMin = ((likely['first-slice'] as number) - (likely['off-heat'] as number)) / 60_000
    expect(why.causes.map(({ what, byS }) => [what, Math.round(byS)])).toEqual([
      ['meat-on', 420],
      ['sear', 240],
      ['rest', Math.round(60 * (25 - restMin))],
    ])
    expect(Math.abs(why.unexplainedS)).toBeLessThan(1)
  })
  it('says that a fire was lit late and caught up, or brought the meat late', () => {
    const fire = later(likely['fire-lit'] as Instant, minutes(18))
    const caught = dayOf(plan, { happened: { ...likely, 'fire-lit': fire }, readings: [] })
    expect(whySentences(caught, 'kettle-charcoal', 'metric')[0]).toBe(
      'The fire was lit eighteen minutes late, but it caught up.',
    )
    const held = { ...timesOf(planned, later(PLANNED_ON, minutes(16))), 'fire-lit': fire }
    expect(whySentences(dayOf(plan, { happened: held, readings: [] }), 'kettle-charcoal', 'metric')[0]).toBe(
      'The fire was lit eighteen minutes late, and the meat went on late: sixteen minutes.',
    )
  })
  it('leaves a colder start, which nobody saw, unexplained', () => {
    const colder = { ...plan, roast: { ...plan.roast, start: celsius(plan.roast.start - 4) } }
    const why = dayOf(colder, { readings: [] })
    expect(why.causes.every(({ byS }) => Math.abs(byS) < 60)).toBe(true)
    expect(min(why.unexplainedS)).toBeGreaterThan(1.5)
    expect(whySentences(why, 'kettle-charcoal', 'metric').at(-1)).toMatch(/^Not explained: .* A colder start/)
  })
  it('knows nothing without a mark of meat-on', () => {
    const { 'meat-on': _, ...happened } = likely
    expect(whyOf({ plan, morning, happened, readings: [], lids: [], pulledAt: null, cook })).toBeNull()
  })
})
