import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../lib/day/layout'
import type { Shoot } from '../../../lib/plan/shoot'
import type { BoardFacts } from '../../../lib/session/board-facts'
import { comparePlans } from '../../../lib/session/compare-plans'
import { factsNow } from '../../../lib/session/re-planned'
import { at, line } from '../log/lines'
import { live, sessionDayWith, toldOf } from './made-up-day'

const iso = (min: number) => new Date(at(min)).toISOString()
const layout = (herbs: number, changes: Partial<Layout> = {}) =>
  ({
    shots: [
      {
        id: 'herbs',
        setupStart: iso(herbs),
        start: iso(herbs + 5),
        end: iso(herbs + 10),
        people: ['cam-2'],
        camera: ['B'],
      },
      { id: 'first-cut', setupStart: iso(70), start: iso(80), end: iso(86), people: ['cam-1'], camera: ['A'] },
    ],
    calls: [{ id: 'call-first-cut', for: 'first-cut', moment: 'first-slice' }],
    tasks: [],
    meals: [{ start: iso(40), end: iso(60), people: ['cam-1'] }],
    ...changes,
  }) as unknown as Layout
const shoot = {
  shots: [
    { id: 'herbs', title: 'Herbs' },
    { id: 'first-cut', title: 'First slice' },
  ],
} as unknown as Shoot

describe('a re-plan before and after it is sent', () => {
  it('names what moves, what is dropped and whom it concerns, and leaves the rest unsaid', () => {
    expect(comparePlans(shoot, layout(20), layout(20), at(10))).toEqual([])
    const [moved] = comparePlans(shoot, layout(20), layout(35), at(10))
    expect(moved).toMatchObject({ id: 'shot-herbs', title: 'Herbs', from: at(20), to: at(35), people: ['cam-2'] })
    const without = layout(20, { shots: layout(20).shots.slice(1) })
    expect(comparePlans(shoot, layout(20), without, at(10))).toMatchObject([
      { id: 'shot-herbs', to: null, place: null },
    ])
    const meal = layout(20, {
      meals: [{ start: iso(50), end: iso(70), people: ['cam-1', 'cam-2'] }] as Layout['meals'],
    })
    expect(comparePlans(shoot, layout(20), meal, at(10))).toMatchObject([{ id: 'meal-0', people: ['cam-1', 'cam-2'] }])
  })

  it('says nothing of what has begun', () => {
    expect(comparePlans(shoot, layout(20), layout(25), at(30))).toEqual([])
  })

  it('moves the boards and the meal alert of everybody who hears of it', () => {
    const day = live(sessionDayWith({ calls: [], meals: [{ start: at(40), people: ['cam-1'] }] }))
    const moves = [
      { id: 'shot-herbs', setup: iso(35), start: iso(40), end: iso(45), people: ['cam-1'], cameras: ['A'] },
      { id: 'meal-0', start: iso(90), end: iso(110), people: ['cam-1'] },
    ]
    day.line(20, line(20, 'plan-change', { version: 1, what: 'Herbs 15 min later', moves }))
    const facts = {
      shots: {
        herbs: { number: 1, setupStart: at(20), start: at(25), end: at(30), people: ['cam-2'], cameras: ['B'] },
      },
      tasks: [],
      meals: [{ id: 'meal-0', title: 'Meal', start: at(40), end: at(60), people: ['cam-1'] }],
    } as unknown as BoardFacts
    const now = factsNow(facts, day.session().told)
    expect(now.shots.herbs).toMatchObject({ setupStart: at(35), people: ['cam-1'], cameras: ['A'], number: 1 })
    expect(now.meals[0]).toMatchObject({ start: at(90), title: 'Meal' })
    expect(toldOf(day.run(30, 79))).toEqual([])
    expect(toldOf(day.run(79.5, 81))).toEqual(['trouble meal/0 -> stylist'])
  })
})
