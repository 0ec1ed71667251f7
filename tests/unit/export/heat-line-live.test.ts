import { expect, test } from 'vitest'
import type { TextMark } from '../../../lib/export/drawing'
import { heatLineFacts } from '../../../lib/export/heat-line'
import { drawHeat } from '../../../lib/export/heat-line-draw'
import { type LiveRoast, liveFacts } from '../../../lib/export/heat-line-live'
import { readoutAt } from '../../../lib/export/heat-line-readout'
import { liveLine } from '../../../lib/session/live-line'
import { later, minutes } from '../../../lib/units'
import { fromMeatOn, lambLayout, lambShoot, MEAT_ON, PLACE, syntheticForecast, ZONE } from './synthetic'

/** A day on which everything comes twelve minutes after the plan: at 18:58 the probe has been read five times. */
const NOW = fromMeatOn(106)
const plan = {
  zone: ZONE,
  place: PLACE,
  title: 'x',
  cooks: [{ forecast: syntheticForecast(), meatOn: MEAT_ON, title: 'hero' }],
  shoot: lambShoot(),
  layout: lambLayout(),
  units: 'metric' as const,
}
const morning = heatLineFacts(plan)
if (!morning) throw new Error('no cook')
const done = ['fire-lit', 'cooker-steady', 'meat-on', 'turn', 'probe-in']
const roast: LiveRoast = {
  line: liveLine(syntheticForecast({ pullMin: 165, widthMin: 20 }), MEAT_ON, 5 * 3600),
  marked: (moment) => done.includes(moment),
  window: (moment) => {
    const likely = morning.moments.find(({ id }) => id === moment)?.likely ?? null
    if (likely === null || done.includes(moment)) return { early: likely, likely, late: likely }
    const late = later(likely, minutes(12))
    return { early: later(late, minutes(-10)), likely: late, late: later(late, minutes(10)) }
  },
  read: [66, 76, 86, 96, 106].map((min) => ({ at: fromMeatOn(min), level: 16 + (min - 66) * 0.35 })),
  cookerRead: [],
}
const live = liveFacts(morning, roast)
const view = { width: 1232, standing: false, lanes: true, now: NOW }
const words = (facts = live, how: object = {}) =>
  drawHeat({ ...view, ...how }, facts)
    .marks.filter((mark): mark is TextMark => mark.kind === 'text')
    .map(({ text }) => text)

test('on the day: now, the last reading, what was forecast this morning, and no window for what has happened', () => {
  const said = words()
  expect(said).toEqual(expect.arrayContaining(['now 18:58', '30 °C', 'read 18:58', 'forecast this morning']))
  expect(said).toEqual(expect.arrayContaining(['19:57', '19:47 to 20:07', '19:45 this morning']))
  expect(said.filter((text) => text === '18:13')).toHaveLength(1)
})
test('on the day: now stands on the phone with what the probe reads', () => {
  expect(words(live, { width: 332, standing: true })).toContain('now 18:58, probe 30 °C')
})
test('on another day there is no now', () => {
  expect(words(live, { now: fromMeatOn(60 * 24) }).some((text) => text.startsWith('now'))).toBe(false)
})
test('on the day: before now a minute reads what the probe read, after it what is forecast', () => {
  expect(readoutAt(live, fromMeatOn(87))).toContain('probe read 23 °C at 18:38')
  expect(readoutAt(live, fromMeatOn(140))).toMatch(/probe \d+ °C, \d+ to \d+/)
})
test('on the day: the table tells this morning’s times beside what happened', () => {
  const [moments, curve, readings] = drawHeat(view, live).tables
  expect(moments?.rows).toContainEqual([
    'pull temperature',
    '19:57',
    '19:47',
    '20:07',
    '100 % of cooks',
    '19:45',
    'ahead',
  ])
  expect(moments?.rows).toContainEqual(['meat on', '17:12', '17:12', '17:12', '100 % of cooks', '17:12', 'happened'])
  expect(curve?.head).toContain('this morning')
  expect(readings?.rows.at(-1)).toEqual(['18:58', '30 °C'])
})
test('until there is a live forecast this morning’s curve is the forecast, and is drawn once', () => {
  const early = liveFacts(morning, { ...roast, line: null })
  expect(early.meat).toEqual(morning.meat)
  expect(words(early)).not.toContain('forecast this morning')
})
