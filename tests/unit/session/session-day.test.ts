import { describe, expect, it } from 'vitest'
import { layOutDay } from '../../../lib/day/lay-out'
import { fromIso } from '../../../lib/plan/clock'
import { sessionDay } from '../../../lib/session/session-day'
import { syntheticForecast } from '../day/synthetic-forecast'
import { lamb, read } from '../plan/shoots'

describe('the day of a live session', () => {
  const shoot = read(lamb())
  const forecasts = new Map(
    shoot.cooks.map(({ id }) => [id, syntheticForecast(id, { members: 64, seed: 1, toPull: 150 })]),
  )
  const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps: 40 })
  const day = sessionDay(shoot, layout)

  it('has every call of the layout, with its lead, trigger and people', () => {
    const atMoments = layout.calls.filter((one) => one.moment !== null)
    expect(atMoments.length).toBeGreaterThan(1)
    expect(day.calls.map(({ id }) => id)).toEqual(atMoments.map(({ id }) => id))
    for (const [i, one] of day.calls.entries()) {
      expect(one.people).toEqual(atMoments[i]?.people)
      expect(one.standby).toBe(fromIso(atMoments[i]?.standby as string))
      expect(one.likely).toBe(fromIso(atMoments[i]?.window.likely as string))
      expect(one.trigger).toBe(atMoments[i]?.trigger?.probe ?? null)
      expect(one.release + one.setup + one.before).toBeGreaterThan(15 * 60)
    }
  })
  it('knows who stands behind a camera and who is in shot, and that a locked-off camera holds nobody', () => {
    const locked = (shoot.shots ?? []).filter((shot) => shot.locked).map(({ id }) => id)
    for (const placed of layout.shots) {
      const shot = day.shots[placed.id]
      const all = [...(shot?.operators ?? []), ...(shot?.inShot ?? [])]
      expect(all).toEqual(locked.includes(placed.id) ? [] : placed.people)
    }
  })
  it('lets food stand out for two hours, and for one where the air is hot', () => {
    const hot = sessionDay({ ...shoot, weather: { ...shoot.weather, air: 34 as never } }, layout)
    expect([day.cooks[0]?.outLimit, hot.cooks[0]?.outLimit]).toEqual([7200, 3600])
    expect(day.cooks[0]?.pullAt).toBe(46)
  })
})
