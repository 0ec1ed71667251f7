import { expect, test } from 'vitest'
import type { DayForecast } from '../../../lib/day/day-forecast'
import { sliceAfterWrap } from '../../../lib/day/slice-after-wrap'
import { parseShoot } from '../../../lib/plan/parse'
import { gardenDocument } from './garden-shoot'

const HOUR_S = 3600
const shootWith = (day: Record<string, unknown>) => {
  const read = parseShoot(gardenDocument({ day }))
  if (!read.ok) throw new Error(read.problems[0]?.sentence)
  return read.value
}
/** Twenty cooks, sliced 4 h to 5 h 54 min after meat-on. */
const slice = Float64Array.from({ length: 20 }, (_, m) => 4 * HOUR_S + m * 360)
const sentence = (wrap: string | undefined) => {
  const shoot = shootWith(wrap === undefined ? { call: '12:00' } : { call: '12:00', wrap })
  const id = shoot.cooks[0]?.id ?? ''
  const forecasts = new Map([[id, { moments: { 'first-slice': slice } } as unknown as DayForecast]])
  return sliceAfterWrap(shoot, forecasts, { meatOn: { [id]: `${shoot.date}T14:00+01:00` }, start: '' })
}

test('a slice in time, or a day without a wrap, has nothing said of it', () => {
  expect(sentence('20:00')).toBeNull()
  expect(sentence(undefined)).toBeNull()
})
test('a slice that some cooks bring too late is told with how many', () => {
  expect(sentence('19:30')).toMatch(/^In 20 cooks of 100 the first slice comes after the wrap at 19:30\. Write a later/)
})
test('a wrap before the slice is told with both times', () => {
  expect(sentence('17:00')).toMatch(
    /^The first slice is likely at 18:5\d, and the day wraps at 17:00\. Write a later wrap/,
  )
})
