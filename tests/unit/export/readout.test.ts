import { expect, test } from 'vitest'
import { type HeatPlan, heatLineFacts } from '../../../lib/export/heat-line'
import { nextMoment, readoutAt } from '../../../lib/export/heat-line-readout'
import { instant } from '../../../lib/units'
import { fromMeatOn, lambLayout, lambShoot, MEAT_ON, PLACE, syntheticForecast, ZONE } from './synthetic'

function factsOf(change: Partial<HeatPlan> = {}) {
  const facts = heatLineFacts({
    zone: ZONE,
    place: PLACE,
    title: 'x',
    cooks: [{ forecast: syntheticForecast(), meatOn: MEAT_ON, title: 'x' }],
    shoot: lambShoot(),
    layout: lambLayout(),
    units: 'metric',
    ...change,
  })
  if (!facts) throw new Error('no cook')
  return facts
}
const wordsAt = (at: number, change: Partial<HeatPlan> = {}) => readoutAt(factsOf(change), at)

test('readout: probe with its band, cooker, who is at work, and the light', () => {
  expect(wordsAt(fromMeatOn(120))).toMatch(/^19:12: probe \d+ °C, \d+ to \d+; cooker 150 °C; camera A: Table laid/)
  expect(wordsAt(fromMeatOn(21))).toMatch(
    /^17:33: probe 5 °C, 5 to 6; cooker 150 °C; camera A: Mint sauce; sun 3\d° up$/,
  )
  expect(wordsAt(fromMeatOn(200))).toMatch(/^20:32: .*; golden hour$/)
})
test('readout: who stands by for what, and the moment itself with its window', () => {
  expect(wordsAt(fromMeatOn(14))).toContain('camera A stands by for Mint sauce')
  expect(wordsAt(fromMeatOn(153))).toMatch(/^19:45: pull temperature, 19:13 to 20:17; probe 46 °C/)
})
test('readout: before the meat is on there is no probe, before the fire nothing but the sun', () => {
  expect(wordsAt(fromMeatOn(-90))).toMatch(/^15:42: camera A: Cooker and garden wall; camera A stands by for Raw/)
  expect(wordsAt(fromMeatOn(-140))).toMatch(/^14:52: nothing planned; sun 51° up$/)
})
test('readout: from one moment to the next and back', () => {
  const facts = factsOf()
  expect(nextMoment(facts, fromMeatOn(0), 1)).toBe(fromMeatOn(61))
  expect(nextMoment(facts, fromMeatOn(61), -1)).toBe(fromMeatOn(0))
  expect(nextMoment(facts, fromMeatOn(900), 1)).toBeNull()
})
test('readout: degrees as the person chose', () => {
  expect(wordsAt(fromMeatOn(1), { units: 'us' })).toContain('probe 39 °F')
})
test('readout: the clock goes back in the night', () => {
  // 2027-10-31 02:00 summer time is 01:00 again in Dublin.
  const meatOn = instant(Date.parse('2027-10-31T00:30:00+01:00'))
  const cooks = [{ forecast: syntheticForecast(), meatOn, title: 'x' }]
  const change = { cooks, layout: undefined }
  expect(wordsAt(Date.parse('2027-10-31T01:58:00+01:00'), change)).toMatch(/^01:58: /)
  expect(wordsAt(Date.parse('2027-10-31T01:03:00+00:00'), change)).toMatch(/^01:03: /)
})
