import { describe, expect, it } from 'vitest'
import { foodClock } from '../../../lib/session/food-clock'
import { seconds } from '../../../lib/units'
import { at, line, mark, reading } from '../log/lines'
import { live, sessionDayWith, toldOf } from './made-up-day'

const hero = { id: 'hero', outLimit: seconds(7200) }
const food = (min: number, is: string, cook = 'hero') => line(min, 'food', { cook, is })

describe('the food clock', () => {
  it('runs from the slice for two hours, and stops when the food is back', () => {
    const day = live()
    day.tick(10)
    expect(foodClock(day.session(), hero)).toMatchObject({ is: 'not-out', discardAt: null })
    day.line(20, mark(20, 'first-slice'))
    expect(foodClock(day.session(), hero)).toMatchObject({ is: 'out', since: at(20), discardAt: at(140), past: false })
    day.line(60, food(60, 'back'))
    expect(foodClock(day.session(), hero)).toMatchObject({ is: 'back', discardAt: null })
  })

  it('allows one hour where the air beside it was read above 32 °C', () => {
    const day = live()
    day.line(10, food(10, 'out'))
    day.line(30, reading(30, 31, {}, 'air'))
    expect(foodClock(day.session(), hero).discardAt).toBe(at(130))
    day.line(50, reading(50, 34, {}, 'air'))
    expect(foodClock(day.session(), hero)).toMatchObject({ discardAt: at(70), air: 34, past: false })
    day.tick(70)
    expect(foodClock(day.session(), hero).past).toBe(true)
  })

  it('is told for a side that stands out too, under its own name', () => {
    const sides = [{ id: 'potatoes', title: 'Potatoes', outLimit: seconds(7200) }]
    const day = live(sessionDayWith({ calls: [], sides }))
    day.line(10, food(10, 'out', 'potatoes'))
    expect(toldOf(day.run(11, 109))).toEqual([])
    expect(toldOf(day.run(109.5, 110.5))).toEqual(['trouble food-out/potatoes/1 -> stylist'])
  })
})
