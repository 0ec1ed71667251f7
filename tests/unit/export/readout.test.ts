import { expect, test } from 'vitest'
import { drawHeatLine, type HeatLineInput, heatLineFacts } from '../../../lib/export/heat-line'
import { readoutOf } from '../../../lib/export/heat-line-readout'
import { readoutWords } from '../../../lib/export/readout-words'
import { instant } from '../../../lib/units'
import { fromMeatOn, lambLayout, lambShoot, MEAT_ON, PLACE, syntheticForecast, ZONE } from './synthetic'

function wordsAt(at: number, change: Partial<HeatLineInput> = {}): string {
  const input: HeatLineInput = {
    zone: ZONE,
    place: PLACE,
    title: 'x',
    cooks: [{ forecast: syntheticForecast(), meatOn: MEAT_ON, title: 'x' }],
    shoot: lambShoot(),
    layout: lambLayout(),
    width: 1232,
    units: 'metric',
    lanes: true,
    standing: false,
    ...change,
  }
  const facts = heatLineFacts(input)
  const { axis } = drawHeatLine(input)
  if (!facts || !axis) throw new Error('no cook')
  return readoutWords(readoutOf(input, facts, axis), Math.round((at - axis.from) / 60_000))
}

test('readout: probe with its band, cooker, and who is at work', () => {
  expect(wordsAt(fromMeatOn(21))).toMatch(/^17:33: probe \d+ °C, \d+ to \d+; cooker 150 °C; camera A: Mint sauce$/)
})
test('readout: before the meat is on there is no probe, before the fire nothing', () => {
  expect(wordsAt(fromMeatOn(-90))).toMatch(/^15:42: camera A: Cooker and garden wall$/)
  expect(wordsAt(fromMeatOn(-140))).toBe('14:52: nothing planned')
})
test('readout: the standing picture is read as the lying one', () => {
  const standing = wordsAt(fromMeatOn(21), { standing: true, width: 362 })
  expect(standing).toBe(wordsAt(fromMeatOn(21)))
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
