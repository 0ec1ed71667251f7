import { describe, expect, it } from 'vitest'
import { assimilate } from '../../../lib/model/assimilate'
import type { CookPlan } from '../../../lib/model/cook'
import type { Forecast } from '../../../lib/model/forecast'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { medianOf, windowOf } from '../../../lib/model/quantiles'
import { chanceOf } from '../../../lib/model/random'
import { watchInput } from '../../../lib/model/read-summary'
import type { Mark, Reading } from '../../../lib/model/readings'
import { whyMoved } from '../../../lib/model/why-moved'
import { celsius, minutes, seconds } from '../../../lib/units'
import { cookPlan } from '../../laws/cooks'

const options = { seed: 3, members: 64, kernel: 'simd' } as const
const plan = cookPlan({
  kg: 2.4,
  sear: { do: 'sear', at: celsius(300), until: { after: minutes(3) }, max: minutes(15) },
})
const before = forecastCook(plan, options)
/** The member whose pull is nearest a share of all. */
const memberAt = (share: number) => {
  const pulls = before.moments.pull as Float64Array
  const wanted = [...pulls].sort((a, b) => a - b)[Math.floor(share * pulls.length)] as number
  return pulls.indexOf(wanted)
}
const pullOf = (m: number) => (before.moments.pull as Float64Array)[m] as number
const rowOf = (column: Float32Array, m: number, { trace }: Forecast = before) =>
  column.subarray(m * trace.count - trace.startS / 60, (m + 1) * trace.count)
/** To a tenth, with a thermometer's flicker. */
function readingsOf(m: number, untilS: number): Reading[] {
  const [core, cooker] = [rowOf(before.trace.probeC, m), rowOf(before.trace.cookerC, m)]
  const { normal } = chanceOf(3, m, 99)
  const shown = (tempC: number) => celsius(Math.round(10 * (tempC + 0.1 * normal())) / 10)
  return Array.from({ length: Math.floor(untilS / 120) + 1 }, (_, i) => 2 * i).flatMap((minute) => [
    { t: seconds(60 * minute), sensor: 'core' as const, tempC: shown(core[minute] as number) },
    { t: seconds(60 * minute), sensor: 'cooker' as const, tempC: shown(cooker[minute] as number) },
  ])
}
const pull = (forecast: Forecast) => windowOf(forecast.moments.pull as Float64Array)
const given = (readings: readonly Reading[], marks: readonly Mark[] = [], at: CookPlan = plan) =>
  assimilate(at, { readings, marks }, options)

describe('a forecast given readings', { timeout: 60_000 }, () => {
  it('without a reading it is the plan’s', () => expect(given([]).forecast.moments.pull).toEqual(before.moments.pull))

  it.each([0.15, 0.5, 0.85])('half an hour ahead it knows the pull of the member at %s to 3 min', (share) => {
    const m = memberAt(share)
    const { forecast } = given(readingsOf(m, pullOf(m) - 1800))
    const window = pull(forecast)
    expect(Math.abs((window.likely as number) - pullOf(m))).toBeLessThan(180)
    expect(window.early as number).toBeLessThan(pullOf(m))
    expect(window.late as number).toBeGreaterThan(pullOf(m))
  })

  it('windows narrow from reading to reading', () => {
    const m = memberAt(0.5)
    const widths = [3600, 2400, 1200, 600].map((aheadS) => {
      const window = pull(given(readingsOf(m, pullOf(m) - aheadS)).forecast)
      return (window.late as number) - (window.early as number)
    })
    const planned = pull(before)
    expect([(planned.late as number) - (planned.early as number), ...widths]).toEqual(
      [...widths, (planned.late as number) - (planned.early as number)].sort((a, b) => b - a),
    )
  })

  it('readings as forecast change little: the likely pull stays within 3 min, and no window widens', () => {
    const { count, startS } = before.trace
    const middle = (column: Float32Array, minute: number) =>
      celsius(
        medianOf(
          Float64Array.from({ length: before.members }, (_, m) => column[m * count - startS / 60 + minute] as number),
        ),
      )
    const readings = Array.from({ length: 10 }, (_, i) => 6 * i).flatMap((minute) => [
      { t: seconds(60 * minute), sensor: 'core' as const, tempC: middle(before.trace.probeC, minute) },
      { t: seconds(60 * minute), sensor: 'cooker' as const, tempC: middle(before.trace.cookerC, minute) },
    ])
    const { forecast } = given(readings)
    const [planned, now] = [pull(before), pull(forecast)]
    expect(Math.abs((now.likely as number) - (planned.likely as number))).toBeLessThan(180)
    for (const id of ['pull', 'off-heat', 'first-slice'] as const) {
      const [was, is] = [before, forecast].map((of) => windowOf(of.moments[id] as Float64Array))
      expect((is?.late as number) - (is?.early as number)).toBeLessThan((was?.late as number) - (was?.early as number))
    }
  })

  it('a dead probe leaves open whether the pull has been; the window grows with the silence', () => {
    const m = memberAt(0.5)
    const readings = readingsOf(m, pullOf(m) - 2400)
    const silent = assimilate(plan, { readings, nowS: pullOf(m) - 300 }, options)
    expect(silent.nowS).toBe(pullOf(m) - 300)
    expect(silent.pastS.pull).toBeUndefined()
    expect(Math.abs((pull(silent.forecast).likely as number) - pullOf(m))).toBeLessThan(480)
  })

  it('a pull that has been read is past in every member, and the sear goes on from there', () => {
    const m = memberAt(0.5)
    const readings = readingsOf(m, pullOf(m) + 120)
    const { forecast, pastS } = given(readings)
    expect(pastS.pull).toBeGreaterThan(pullOf(m) - 60)
    expect(pastS.pull).toBeLessThan(pullOf(m) + 60)
    expect(new Set(forecast.moments.pull)).toEqual(new Set([pastS.pull]))
    for (const id of ['vents-open', 'sear-start', 'off-heat', 'first-slice'] as const)
      expect(Math.min(...(forecast.moments[id] as Float64Array))).toBeGreaterThanOrEqual(pastS.pull as number)
    expect(medianOf(forecast.moments['off-heat'] as Float64Array)).toBeLessThan((pastS.pull as number) + 1200)
  })

  it('a mark outranks the plan: a probe that went in late, a pull before its time', () => {
    const m = memberAt(0.5)
    const late = seconds(1500)
    const readings = readingsOf(m, pullOf(m) - 2400)
    const marks: Mark[] = [{ moment: 'probe-in', t: late }]
    const { forecast, went } = given(readings, marks)
    expect(went.course.probeInS).toBe(late)
    expect(new Set(forecast.moments['probe-in'])).toEqual(new Set([late]))
    const early = seconds(Math.floor(pullOf(m) - 2400))
    const pulled = given(readings, [{ moment: 'pull', t: early }])
    expect(new Set(pulled.forecast.moments.pull)).toEqual(new Set([early]))
  })

  it('a live probe below its level has not come to the pull', () => {
    const m = memberAt(0.85)
    const nowS = Math.floor((pullOf(m) - 300) / 120) * 120
    const { forecast } = given(readingsOf(m, nowS))
    expect(Math.min(...(forecast.moments.pull as Float64Array))).toBeGreaterThanOrEqual(nowS)
  })

  it('readings of a probe that fell out are left aside', () => {
    const m = memberAt(0.5)
    const nowS = pullOf(m) - 1800
    const out = readingsOf(m, nowS).map((reading) =>
      reading.sensor === 'core' && reading.t > nowS - 500 ? { ...reading, tempC: celsius(140) } : reading,
    )
    const found = given(out)
    expect(Math.abs((pull(found.forecast).likely as number) - pullOf(m))).toBeLessThan(420)
    expect(found.pastS.pull).toBeUndefined()
    expect(watchInput(before, found, { readings: out }).core.at(-1)?.tempC).toBe(140)
  })

  it('says that the cooker runs under its dial, and how much later that makes the pull', () => {
    const m = memberAt(0.5)
    const readings = readingsOf(m, 2400).map((reading) =>
      reading.sensor === 'cooker' ? { ...reading, tempC: celsius(reading.tempC - 14) } : reading,
    )
    const moved = whyMoved(before, given(readings))
    const reason = moved.reasons.find(({ sentence }) => sentence.startsWith('The cooker runs'))
    expect(reason?.sentence).toMatch(/^The cooker runs \d+ °C under its dial: \d+ min later\.$/)
    expect(reason?.byS).toBeGreaterThan(60)
  })

  it('begun from the last fit it comes to the same', () => {
    const m = memberAt(0.3)
    const readings = readingsOf(m, pullOf(m) - 1800)
    const fresh = given(readings)
    const again = assimilate(plan, { readings }, { ...options, last: fresh.fit })
    const apart = (pull(again.forecast).likely as number) - (pull(fresh.forecast).likely as number)
    expect(Math.abs(apart)).toBeLessThan(60)
  })
})
