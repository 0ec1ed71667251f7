import { describe, expect, it } from 'vitest'
import { foldLog } from '../../../lib/log/fold'
import type { Line } from '../../../lib/log/log'
import { toIso } from '../../../lib/plan/clock'
import { type LiveKept, liveForecast } from '../../../lib/session/live-forecast'
import type { LiveForecast } from '../../../lib/session/session'
import { at, line, logOf, mark, reading } from '../log/lines'
import { lambWith, read } from '../plan/shoots'

const shoot = read(lambWith({ '/shots': undefined, '/tasks': undefined }))
const iso = (min: number) => toIso(at(min), shoot.zone)
const layout = { start: iso(0), meatOn: { hero: iso(60) } }
let planOnly: LiveKept | undefined
const forecast = (nowMin: number, lines: readonly Line[] = [], before: LiveForecast | null = null, kept = planOnly) =>
  liveForecast({ shoot, layout, told: foldLog(logOf(...lines)), now: at(nowMin), before, kernel: 'simd' }, kept)
const minuteOf = ({ expected }: LiveForecast, moment: string) =>
  ((expected.find((one) => one.moment === moment)?.likely ?? Number.NaN) - at(0)) / 60_000

const first = forecast(0)
const planned = first.forecast
planOnly = first.kept
/** The cooker as the plan has it and so much off, read each four minutes. */
function readings(untilMin: number, offK: number): Line[] {
  const told = planned.lines?.hero
  if (!told) throw new Error('no line')
  const row = (of: readonly number[], min: number) => of[told.t.findIndex((t) => t >= 60 * min)] as number
  return Array.from({ length: Math.floor(untilMin / 4) }, (_, i) => 4 * (i + 1)).flatMap((min) => [
    reading(60 + min, row(told.cookerC, min) + offK, {}, 'cooker'),
  ])
}

describe('the live forecast', () => {
  it('before the meat is on is the plan’s, and slips as the meat is late', () => {
    expect(planned.reason).toBe('Off the heat as planned.')
    const late = forecast(75, [], planned).forecast
    expect(minuteOf(late, 'off-heat') - minuteOf(planned, 'off-heat')).toBeCloseTo(15)
    expect(late.reason).toBe('Meat on is not marked yet: off the heat about 15 min later than planned.')
  })
  it('counts from the marked meat-on', () => {
    const { forecast: now } = forecast(70, [mark(68, 'meat-on')], planned)
    expect(minuteOf(now, 'meat-on')).toBe(68)
    expect(Math.abs(minuteOf(now, 'off-heat') - minuteOf(planned, 'off-heat') - 8)).toBeLessThan(2)
    expect(now.reason).toMatch(/^Meat on 8 min later than planned: off the heat about \d min later than planned\.$/)
  })
  it('says in words why readings moved it, and by how much', () => {
    const { forecast: now } = forecast(110, [mark(60, 'meat-on'), ...readings(48, -14)], planned)
    const byMin = Math.round(minuteOf(now, 'off-heat') - minuteOf(planned, 'off-heat'))
    expect(byMin).toBeGreaterThan(3)
    expect(now.reason).toMatch(
      new RegExp(`^The cooker runs 1\\d °C under its dial: off the heat about ${byMin} min later than planned\\.$`),
    )
  })
  it('goes by what was adopted on the set, from when it was', () => {
    const adopted = (change: object) => line(62, 'what-if-adopted', { version: 1, what: 'tried', change })
    const pull = (...more: readonly Line[]) =>
      minuteOf(forecast(70, [mark(60, 'meat-on'), ...more], planned).forecast, 'pull')
    const asPlanned = pull()
    expect(pull(adopted({ cook: 'hero', core: '56 °C' })) - asPlanned).toBeGreaterThan(3)
    const hotter = asPlanned - pull(adopted({ cook: 'hero', cooker: '170 °C' }))
    expect(hotter).toBeGreaterThan(1)
    expect(pull(adopted({ cook: 'another', core: '56 °C' }))).toBe(asPlanned)
  })
  it('is the same with what the last one kept', () => {
    const lines = [mark(60, 'meat-on'), ...readings(40, 3)]
    const alone = forecast(100, lines, planned, {})
    const again = forecast(100, lines, planned, alone.kept)
    expect(again.forecast.expected).toEqual(alone.forecast.expected)
  })
  it('leaves out a probe that is called wrong', () => {
    const wrong = line(90, 'probe-check', {
      cook: 'hero',
      sensor: 'cooker',
      found: 'wrong',
      from: new Date(at(60)).toISOString(),
    })
    const [off, quiet] = [readings(30, -40), [mark(60, 'meat-on')]]
    const without = forecast(92, quiet).forecast
    expect(minuteOf(forecast(92, [...quiet, ...off, wrong]).forecast, 'off-heat')).toBe(minuteOf(without, 'off-heat'))
    expect(minuteOf(forecast(92, [...quiet, ...off]).forecast, 'off-heat')).not.toBe(minuteOf(without, 'off-heat'))
  })
  it('believes a probe that reads before the plan puts it in', () => {
    const hot = forecast(84, [mark(60, 'meat-on'), reading(80, 30), reading(82, 31.2), reading(84, 32.4)], planned)
    expect(minuteOf(hot.forecast, 'probe-in')).toBe(80)
    expect(minuteOf(planned, 'off-heat') - minuteOf(hot.forecast, 'off-heat')).toBeGreaterThan(15)
  })
  it('raises a trouble with one id while it lasts', () => {
    const lines = [mark(60, 'meat-on'), ...readings(60, -45)]
    const came = forecast(121, lines, planned)
    const next = forecast(123, lines, came.forecast, came.kept)
    expect(came.forecast.troubles).toMatchObject([{ code: 'cooker-off-plan', cook: 'hero', deadline: at(136) }])
    expect(next.forecast.troubles?.[0]).toMatchObject({ id: came.forecast.troubles?.[0]?.id, deadline: at(136) })
  })
})
