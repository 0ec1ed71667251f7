import { describe, expect, test } from 'vitest'
import { packForecasts, unpackForecasts } from '../../../lib/day/forecast-bytes'
import { layOutDay } from '../../../lib/day/lay-out'
import { gardenShoot } from './garden-shoot'
import { syntheticForecast } from './synthetic-forecast'

const forecasts = () =>
  new Map([
    ['hero', syntheticForecast('hero', { members: 21, seed: 1 })],
    ['earlier one', syntheticForecast('earlier one', { members: 7, seed: 2, sear: false })],
  ])

describe('packForecasts, unpackForecasts', () => {
  test('moments and probe come back to the last bit, cook by cook, and nothing else is sent', () => {
    const sent = forecasts()
    const come = unpackForecasts(packForecasts(sent).buffer)
    expect([...come.keys()]).toEqual([...sent.keys()])
    for (const [id, forecast] of sent) {
      const got = come.get(id)
      expect(got?.moments).toEqual(forecast.moments)
      expect(got?.trace.probeC).toEqual(forecast.trace.probeC)
      expect(got?.cook).toEqual(JSON.parse(JSON.stringify(forecast.cook)))
      expect(got?.trace.cookerC).toHaveLength(0)
    }
  })
  test('the day laid out from them is the same day', () => {
    const sent = new Map([['hero', syntheticForecast('hero', { members: 40, seed: 3 })]])
    const come = unpackForecasts(packForecasts(sent).buffer)
    const lay = (from: typeof come) => layOutDay(gardenShoot(), from, { seed: 1, sweeps: 2 })
    expect(lay(come)).toEqual(lay(sent))
  })
})
