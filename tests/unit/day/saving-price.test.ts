import { describe, expect, it } from 'vitest'
import { layOutDay } from '../../../lib/day/lay-out'
import type { Layout } from '../../../lib/day/layout'
import { dayProblem } from '../../../lib/day/problem'
import { savingPrice } from '../../../lib/day/saving-price'
import { searchDay } from '../../../lib/day/search'
import { gardenShoot } from './garden-shoot'
import { syntheticForecast } from './synthetic-forecast'

const forecasts = new Map([['hero', syntheticForecast('hero', { members: 64, seed: 1 })]])
const lay = (change: object): Layout => layOutDay(gardenShoot(change as never), forecasts, { seed: 1, sweeps: 30 })
const ONE = {
  people: [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    { id: 'cam-1', roles: ['camera'] },
    { id: 'stylist', roles: ['stylist'] },
  ],
  cameras: [{ id: 'A' }],
}

describe('what saves a dropped shot', () => {
  const { dropped } = lay(ONE)
  it('has its price beside it: somebody more, for how long', () => {
    const turn = dropped.find((d) => d.id === 'turn')
    expect(turn?.wouldSave).toBe('A second operator with a camera.')
    expect(turn?.price).toMatch(/^It costs one more person for \d+ h and one more camera\.$/)
  })
  it('is one sentence of why and one change, for each of them', () => {
    expect(dropped.length).toBeGreaterThan(0)
    for (const { why, wouldSave } of dropped) {
      expect(why).toMatch(/^[^.]+.*\.$/)
      expect(wouldSave.length).toBeGreaterThan(10)
    }
  })
  it('names the shot that gives way, and the longer day', () => {
    const shot = (id: string, priority: string) => ({
      id,
      title: `Long ${id}`,
      between: ['meat-on', 'turn'],
      setup: '5 min',
      roll: '35 min',
      needs: ['camera'],
      place: 'bench',
      priority,
    })
    const day = (first: string) => {
      const shoot = gardenShoot({ ...ONE, shots: [shot('a', first), shot('b', 'should')] })
      const problem = dayProblem(shoot, forecasts)
      return { problem, draft: searchDay(problem, { seed: 1, sweeps: 20 }).draft }
    }
    const [now, changed] = [day('could'), day('must')]
    expect(savingPrice(now, changed)).toBe('It costs "Long b".')
    const { draft, problem } = now
    expect(savingPrice(now, { problem, draft: { ...draft, wrap: draft.wrap + 60 } })).toBe(
      'It costs 60 min more of 3 people.',
    )
    expect(savingPrice(now, now)).toBeUndefined()
  })
})
