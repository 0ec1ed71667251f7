import { describe, expect, it } from 'vitest'
import { backwardCurve } from '../../../lib/day/backward-curve'
import { checkLayout } from '../../../lib/day/check'
import { layOutDay } from '../../../lib/day/lay-out'
import { asServed, sliceRoom } from '../../../lib/day/slice-wait'
import { parseShoot } from '../../../lib/plan/parse'
import { seconds } from '../../../lib/units'
import { gardenDocument, gardenShoot } from './garden-shoot'
import { syntheticForecast } from './synthetic-forecast'

const rest = (afterMin: number, maxMin?: number) => ({
  do: 'rest' as const,
  until: { after: seconds(afterMin * 60) },
  ...(maxMin === undefined ? {} : { max: seconds(maxMin * 60) }),
})
function forecastOf(maxMin?: number, members = 128) {
  const plain = syntheticForecast('hero', { members, seed: 3 })
  return { ...plain, cook: { ...plain.cook, stages: [rest(15, maxMin)] } }
}
const shootFor = (slice: object, more = {}) => gardenShoot({ day: { slice, ...more } })
const minute = (iso: string | null) => Date.parse(iso ?? '') / 60_000

describe('meat-on against the chance of the wished slice', () => {
  const shoot = shootFor({ at: '18:30' })
  const stiff = backwardCurve(shoot, forecastOf())
  const easy = backwardCurve(shoot, forecastOf(60))

  it('counts a cook whose rest may last longer as made from its earliest to its latest slice', () => {
    expect(stiff?.best.chance).toBeLessThan(0.5)
    expect(easy?.best.chance).toBeGreaterThan(0.85)
    expect(easy?.best.waits).toBeGreaterThan(0.5)
  })
  it('agrees with a count by hand at every tenth point', () => {
    const forecast = forecastOf(60)
    const slices = forecast.moments['first-slice'] as Float64Array
    const wanted = Date.parse('2027-05-15T18:30+01:00') / 60_000
    for (const point of (easy?.points ?? []).filter((_, i) => i % 10 === 0)) {
      const on = minute(point.meatOn)
      const made = slices.filter((s) => on + s / 60 <= wanted + 5 && on + s / 60 + 45 >= wanted - 5)
      expect(point.chance).toBeCloseTo(made.length / slices.length, 9)
    }
  })
  it('has later meat-on for a smaller chance, and says where no meat-on has it', () => {
    const [half, most, nearly] = easy?.marks ?? []
    expect(minute(half?.latest ?? null)).toBeGreaterThan(minute(most?.latest ?? null))
    expect(minute(half?.earliest ?? null)).toBeLessThan(minute(most?.earliest ?? null))
    expect(most?.sentence).toMatch(/^Meat on by \d\d:\d\d: sliced at 18:30 in 80 % of cooks\.$/)
    expect(nearly?.latest === null ? nearly.sentence : 'Never more than 1 %:').toMatch(/^Never more than \d+ %:/)
    expect(stiff?.marks[1]?.latest).toBeNull()
    expect(stiff?.marks[1]?.sentence).toMatch(/^Never more than \d+ %: with the meat on at /)
  })
  it('is null where nothing is wished or the light never comes', () => {
    expect(backwardCurve(gardenShoot({ day: { call: '12:00' } }), forecastOf())).toBeNull()
    const pole = gardenShoot({
      place: { lat: 78, lon: 15 },
      zone: 'Arctic/Longyearbyen',
      day: { slice: { in: 'night' } },
    })
    expect(backwardCurve(pole, forecastOf())).toBeNull()
  })
  it('says when the call is too late for a chance', () => {
    const late = backwardCurve(shootFor({ at: '18:30' }, { call: '17:30' }), forecastOf(60))
    expect(late?.marks[0]?.sentence).toMatch(/The call at 17:30 is too late for it\.$/)
  })
  it('moves every time alike when the wish moves by half an hour, and when the day moves by one', () => {
    const later = backwardCurve(shootFor({ at: '19:00' }), forecastOf(60))
    const tomorrow = backwardCurve(gardenShoot({ date: '2027-05-16', day: { slice: { at: '18:30' } } }), forecastOf(60))
    expect(later?.points.map((p) => minute(p.meatOn) - 30)).toEqual(easy?.points.map((p) => minute(p.meatOn)))
    expect(tomorrow?.points.map((p) => minute(p.meatOn) - 1440)).toEqual(easy?.points.map((p) => minute(p.meatOn)))
    expect(later?.points.map((p) => p.chance)).toEqual(easy?.points.map((p) => p.chance))
  })
})

describe('how long a slice may wait', () => {
  it('is what rest and hold may last beyond what they must, together', () => {
    const plain = syntheticForecast('hero', { members: 2, seed: 1 })
    const hold = { do: 'hold' as const, in: 'box' as const, until: { after: seconds(600) }, max: seconds(3600) }
    const held = { ...plain, cook: { ...plain.cook, stages: [rest(15, 40), hold] } }
    expect([...sliceRoom(held)]).toEqual([75, 75])
    expect([...sliceRoom({ ...plain, cook: { ...plain.cook, stages: [rest(15)] } })]).toEqual([0, 0])
  })
})

describe('a day that asks for a chance', () => {
  const lay = (chance: string) => {
    const shoot = shootFor({ in: 'golden-hour', chance })
    const forecasts = new Map([['hero', forecastOf(40)]])
    const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps: 20 })
    return { shoot, forecasts, layout, curve: backwardCurve(shoot, forecastOf(40), [0.5, 0.8]) }
  }
  it('puts the meat on as late as the chance allows, and breaks no rule', () => {
    for (const [chance, i] of [
      ['50 %', 0],
      ['80 %', 1],
    ] as const) {
      const { shoot, forecasts, layout, curve } = lay(chance)
      expect(layout.start).toBe(curve?.marks[i]?.latest)
      expect(checkLayout(shoot, layout, forecasts).map((v) => v.sentence)).toEqual([])
      expect(layout.conflicts.filter((c) => c.rule === 'slice-wish')).toEqual([])
    }
  })
  it('rests a cook that is early on until the light comes, and none beyond its most', () => {
    const { shoot, layout } = lay('80 %')
    const plain = forecastOf(40).moments['first-slice'] as Float64Array
    const early = asServed(shoot, 'hero', forecastOf(40), layout.start)
    const served = early.moments['first-slice'] as Float64Array
    for (let m = 0; m < plain.length; m++) {
      expect(served[m] as number).toBeGreaterThanOrEqual(plain[m] as number)
      expect(served[m] as number).toBeLessThanOrEqual((plain[m] as number) + 25 * 60 + 1e-6)
    }
    expect(
      asServed(shootFor({ in: 'golden-hour' }), 'hero', forecastOf(40), layout.start).moments['first-slice'],
    ).toEqual(plain)
  })
  it('is refused at its field where the chance is none', () => {
    const at = (slice: object) => {
      const read = parseShoot({ ...gardenDocument(), day: { slice } })
      return read.ok ? [] : read.problems.map((p) => `${p.pointer}: ${p.sentence}`)
    }
    expect(at({ at: '18:30', chance: '80 %' })).toEqual([])
    expect(at({ at: '18:30', chance: '100 %' })[0]).toMatch(/^\/day\/slice\/chance: .*Write a chance from 5 % to 99 %/)
    expect(at({ chance: '80 %' })[0]).toMatch(
      /^\/day\/slice: The wanted slice holds one of "at" or "in"; here is none\./,
    )
  })
})
