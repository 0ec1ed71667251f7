import { describe, expect, it } from 'vitest'
import { layOutWithLids } from '../../../lib/day/lay-out-with-lids'
import type { Layout } from '../../../lib/day/layout'
import { laterClock } from '../../../lib/plan/clock-text'
import { FOURTEEN, gardenDocument, gardenShoot } from './garden-shoot'
import { syntheticForecast } from './synthetic-forecast'

type Part = Record<string, unknown>
const hero = (gardenDocument().cooks as Part[])[0] as Part
const watch = (gardenDocument().tasks as Part[])[0] as Part

/** A day with everything that hangs on a clock, but no light: the sun does not move with it. */
function dayAt(byMin: number, slice: Part): Part {
  const at = (clock: string) => laterClock(clock, byMin)
  const people = gardenDocument().people as Part[]
  return {
    date: '2027-06-09',
    cooks: [hero, { ...hero, id: 'twin', ready: { by: 'hero/pull' } }],
    day: { call: at('09:00'), wrap: at('21:30'), slice: { at: at('18:30'), ...slice } },
    people: [...people, { id: 'night', roles: ['cook'], hours: { from: at('15:00'), to: at('21:30') } }],
    tasks: [
      watch,
      { ...watch, id: 'watch-twin', cook: 'twin' },
      { id: 'ash-watch', title: 'Out', from: 'off-heat', to: at('20:45'), needs: ['cook'] },
      {
        id: 'clocks',
        title: 'Clocks',
        from: at('09:00'),
        to: at('20:00'),
        takes: '5 min',
        every: '5 h',
        needs: ['camera'],
      },
    ],
    shots: FOURTEEN,
  }
}
function lay(change: Part): Layout {
  const forecasts = new Map([
    ['hero', syntheticForecast('hero', { members: 64, seed: 1 })],
    ['twin', syntheticForecast('twin', { members: 64, seed: 2 })],
  ])
  return layOutWithLids(gardenShoot(change), () => forecasts, { seed: 1, sweeps: 10 }).layout
}
/** Every time in the layout as its distance from one instant; all else as it is. */
const from = (layout: Layout, zero: string) =>
  JSON.parse(
    JSON.stringify(layout).replace(/"(\d{4}-\d\d-\d\dT[^"]+)"/g, (_, iso: string) =>
      String(Date.parse(iso) - Date.parse(zero)),
    ),
  )
/** Sentences name clock times. */
const timesOf = (layout: Layout, zero: string) => ({
  ...from(layout, zero),
  dropped: layout.dropped.map((d) => d.id),
  conflicts: layout.conflicts.map((c) => c.rule),
})

describe.each<[string, Part]>([
  ['with a wished slice', {}],
  ['with a chosen chance', { chance: '80 %' }],
])('a whole shoot %s', (_, slice) => {
  const today = timesOf(lay(dayAt(0, slice)), '2027-06-09T09:00+01:00')
  it('moved by half an hour has every time moved alike', () => {
    expect(timesOf(lay(dayAt(30, slice)), '2027-06-09T09:30+01:00')).toEqual(today)
  })
  it('moved by a day has every time moved alike', () => {
    expect(timesOf(lay({ ...dayAt(0, slice), date: '2027-06-10' }), '2027-06-10T09:00+01:00')).toEqual(today)
  })
})
