import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../lib/day/layout'
import type { Shoot } from '../../../lib/plan/shoot'
import { lastRePlan, layoutNow } from '../../../lib/session/announced-layout'
import type { BoardFacts } from '../../../lib/session/board-facts'
import { asCalled, comparePlans } from '../../../lib/session/compare-plans'
import { factsNow } from '../../../lib/session/re-planned'
import type { Session } from '../../../lib/session/session'
import { seconds } from '../../../lib/units'
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

  it('has a call where the live day has it, and moves it as its moment moves', () => {
    const shifted = { ...layout(20), shots: layout(20).shots.map((shot) => ({ ...shot, setupStart: iso(60) })) }
    const moves = comparePlans(shoot, layout(20), shifted as Layout, at(10)).filter(({ byMoment }) => byMoment)
    expect(moves).toMatchObject([{ id: 'shot-first-cut', from: at(70), to: at(60) }])
    const day = { calls: sessionDayWith().calls }
    const calls = { 'call-first-cut': { announced: at(82), likely: at(96) } } as unknown as Session['calls']
    const slice = (min: number) => [{ cook: 'hero', moment: 'first-slice' as const, likely: at(min), sd: seconds(60) }]
    expect(asCalled(moves, { day, calls }, slice(96))).toEqual([])
    expect(asCalled(moves, { day, calls }, slice(92))).toMatchObject([{ from: at(82), to: at(78) }])
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

  it('is on every sheet: what moved, whom its call names, what was dropped; the likely time moves with its call', () => {
    const day = live(sessionDayWith({ calls: [] }))
    const moves = [
      { id: 'shot-first-cut', setup: iso(85), start: iso(95), end: iso(101), people: ['cam-2'], cameras: ['B'] },
      { id: 'fire/2', start: iso(60), end: iso(90), people: ['presenter'] },
    ]
    day.line(20, line(20, 'plan-change', { version: 1, what: 'First slice 15 min later', moves }))
    day.line(21, line(21, 'shot-state', { shot: 'herbs', state: 'dropped', why: 're-plan' }))
    const likely = { early: iso(75), likely: iso(81), late: iso(90) }
    const call = { id: 'call-first-cut', for: 'first-cut', moment: 'first-slice', standby: iso(70), window: likely }
    const shift = (from: number) => ({ id: 'fire', start: iso(from), end: iso(from + 30), people: ['stylist'] })
    const morning = layout(20, {
      calls: [{ ...call, people: ['cam-1'] }] as unknown as Layout['calls'],
      tasks: [shift(0), shift(30)],
      dropped: [],
      wrap: iso(95),
    })
    const { told } = day.session()
    const now = layoutNow(morning, told, 'UTC')
    const ms = (time: string | null | undefined) => Date.parse(time ?? '')
    expect(now.shots).toMatchObject([{ id: 'first-cut', people: ['cam-2'], camera: ['B'] }])
    expect(ms(now.shots[0]?.start)).toBe(at(95))
    const [called] = now.calls
    expect(called?.people).toEqual(['cam-2'])
    expect([called?.standby, called?.window.early, called?.window.likely].map(ms)).toEqual([at(85), at(90), at(96)])
    expect(now.tasks.map(({ start, people }) => [ms(start), people[0]])).toEqual([
      [at(0), 'stylist'],
      [at(60), 'presenter'],
    ])
    expect(ms(now.wrap)).toBe(at(101))
    expect(now.dropped).toMatchObject([{ id: 'herbs' }])
    expect(lastRePlan(told)).toEqual({ at: at(20), moved: 2, what: 'First slice 15 min later' })
  })

  it('changes whom a call brings, and whose takes are silent', () => {
    const day = live(sessionDayWith())
    const moves = [{ id: 'shot-first-cut', start: iso(80), end: iso(86), people: ['cam-2', 'stylist'], cameras: ['B'] }]
    day.line(20, line(20, 'plan-change', { version: 1, what: 'First slice with other people', moves }))
    const { announced, day: now } = day.session()
    expect(now.calls[0]?.people).toEqual(['cam-2', 'stylist'])
    expect(now.shots['first-cut']).toMatchObject({ operators: ['cam-2'], inShot: ['stylist'] })
    expect(announced.calls[0]?.people).toEqual(['cam-1', 'presenter'])
  })

  it('brings in a shot that had no place, also after it was dropped, and takes a meal out', () => {
    const [called] = sessionDayWith().calls
    const spare = [
      {
        shot: 'smoke',
        crew: { title: 'Smoke', operators: [], inShot: [] },
        call: called ? { ...called, id: 'call-smoke', shot: 'smoke', standby: null, people: [] } : null,
      },
    ]
    const meals = [at(40), at(120)].map((start) => ({ start, people: ['cam-1'] }))
    const day = live(sessionDayWith({ calls: [], spare, meals }))
    const facts = {
      shots: {},
      spare: { smoke: { number: 7, title: 'Smoke', place: null, food: null } },
      tasks: [],
      meals: meals.map(({ start, people }, i) => ({ id: `meal-${i}`, title: 'Meal', start, end: start, people })),
    } as unknown as BoardFacts
    const state = () => day.session().calls['call-smoke']?.state
    const move = { id: 'shot-smoke', setup: iso(70), start: iso(80), end: iso(86), people: ['cam-2'], cameras: ['B'] }
    expect(factsNow(facts, day.session().told).shots.smoke).toBeUndefined()
    day.line(20, line(20, 'plan-change', { version: 1, what: 'Smoke is new', moves: [move], gone: ['meal-0'] }))
    const { told, day: now } = day.session()
    expect(factsNow(facts, told).shots.smoke).toMatchObject({ number: 7, title: 'Smoke', setupStart: at(70) })
    expect(factsNow(facts, told).meals.map(({ id }) => id)).toEqual(['meal-1'])
    expect(now.calls[0]).toMatchObject({ id: 'call-smoke', people: ['cam-2'], standby: at(70) })
    expect(now.shots.smoke).toMatchObject({ operators: ['cam-2'] })
    expect(toldOf(day.run(30, 41))).toEqual([])
    day.line(42, line(42, 'shot-state', { shot: 'smoke', state: 'dropped', why: 're-plan' }))
    expect(state()).toBe('dropped')
    day.line(43, line(43, 'shot-state', { shot: 'smoke', state: 'ahead', why: 're-plan' }))
    expect(state()).toBe('ahead')
    expect(toldOf(day.run(69, 71))).toEqual(['standby call-smoke -> cam-2'])
    const morning = layout(20, {
      meals: [0, 1].map(() => layout(20).meals[0]) as Layout['meals'],
      dropped: [],
      wrap: iso(95),
    })
    expect(layoutNow(morning, told, 'UTC').meals).toHaveLength(1)
  })
})
