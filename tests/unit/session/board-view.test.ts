import { describe, expect, it } from 'vitest'
import type { BoardFacts, BoardShot } from '../../../lib/session/board-facts'
import { dutiesOf, isLapsed, meanwhile, momentWindow, nextDuty } from '../../../lib/session/board-view'
import { agoWords, countLead, countParts, countSpoken, doWords } from '../../../lib/session/board-words'
import { celsius, type Instant } from '../../../lib/units'
import { at, line, mark } from '../log/lines'
import { call, forecastOf, live, sessionDayWith } from './made-up-day'

const shot = (min: number, changes: Partial<BoardShot> = {}): BoardShot => ({
  number: 3,
  title: 'Herbs cut',
  place: 'bench',
  cameras: ['B'],
  people: ['cam-2', 'stylist'],
  setupStart: at(min),
  start: at(min + 5),
  end: at(min + 10),
  food: null,
  ...changes,
})
const facts = (changes: Partial<BoardFacts> = {}): BoardFacts => ({
  title: 'Leg of lamb',
  zone: 'Europe/Dublin',
  people: sessionDayWith().people.map(({ id, roles }) => ({ id, name: id, roles })),
  cameras: ['A', 'B'],
  cooks: [],
  shots: {
    herbs: shot(20),
    'first-cut': shot(75, {
      number: 7,
      title: 'First slice',
      place: 'table',
      cameras: ['A'],
      people: ['cam-1', 'presenter'],
    }),
  },
  tasks: [{ id: 'fire-watch', title: 'In sight of the fire', start: at(0), end: at(90), people: ['presenter'] }],
  meals: [{ id: 'meal-0', title: 'Meal', start: at(40), end: at(60), people: ['cam-1', 'cam-2', 'presenter'] }],
  dark: [],
  ...changes,
})
const next = (day: ReturnType<typeof live>, person: string, now: Instant, all = facts()) =>
  nextDuty(dutiesOf(day.session(), all, person), now)

describe('what the set board says', () => {
  it('shows each person what begins first for them, and keeps a task that goes on apart', () => {
    const day = live()
    day.tick(10)
    expect(next(day, 'cam-2', at(10))).toMatchObject({
      title: 'Herbs cut',
      state: 'ahead',
      until: { what: 'be there', at: at(20) },
    })
    expect(next(day, 'presenter', at(10))).toMatchObject({ title: 'Meal', until: { what: 'begin', at: at(40) } })
    expect(meanwhile(dutiesOf(day.session(), facts(), 'presenter')).map(({ id }) => id)).toEqual(['fire-watch'])
  })

  it('counts to the standby while a call is ahead, and to the moment once it is called', () => {
    const day = live()
    day.forecast(10, forecastOf({ 'first-slice': 84 }))
    day.tick(61)
    const before = live()
    before.tick(50)
    const ahead = next(before, 'cam-1', at(50), facts({ meals: [] }))
    expect(ahead).toMatchObject({ kind: 'call', state: 'ahead', until: { what: 'stand by', at: at(60) }, camera: 'A' })
    const called = next(day, 'cam-1', at(61))
    expect(called).toMatchObject({ state: 'standby', until: { what: 'moment', at: at(84) } })
    expect(called && countLead(called, at(61))).toBe('first slice, in about')
    expect(called && doWords(called, 'metric')).toBe('Camera A at the table. Roll 1 min before; hold 2 min after.')
  })

  it('puts a call that stands by before a free shot that rolls', () => {
    const day = live()
    const both = facts({ shots: { ...facts().shots, herbs: shot(58, { people: ['cam-1'], cameras: ['A'] }) } })
    day.forecast(10, forecastOf({ 'first-slice': 84 }))
    day.line(62, line(62, 'take', { shot: 'herbs', take: 1, camera: 'A', roll: 'start' }))
    expect(next(day, 'cam-1', at(62), both)).toMatchObject({ id: 'call-first-cut', state: 'standby' })
    expect(dutiesOf(day.session(), both, 'cam-1').find(({ id }) => id === 'shot-herbs')?.state).toBe('roll')
  })

  it('waits ten minutes for a free shot of which nobody tells anything, no longer', () => {
    const day = live()
    day.tick(35)
    const [herbs] = dutiesOf(day.session(), facts(), 'stylist')
    expect(herbs && isLapsed(herbs, at(35))).toBe(false)
    expect(herbs && isLapsed(herbs, at(41))).toBe(true)
    expect(next(day, 'stylist', at(41))).toBeNull()
  })

  it('leaves out what is caught, and shows what was answered', () => {
    const day = live()
    day.forecast(10, forecastOf({ 'first-slice': 84 }))
    day.tick(61)
    day.line(62, line(62, 'call-answer', { call: 'call-first-cut', answer: 'coming' }, { person: 'cam-1' }))
    expect(next(day, 'cam-1', at(62))?.answered).toBe('coming')
    day.line(63, line(63, 'shot-state', { shot: 'first-cut', state: 'caught' }))
    expect(next(day, 'cam-1', at(63))).toBeNull()
  })

  it('takes a moment as marked, else as forecast live, else as planned', () => {
    const planned = { early: at(70), likely: at(80), late: at(95) }
    const cooks = [
      { id: 'hero', burns: true, windows: { 'first-slice': planned }, tasting: { allowed: true, why: '' }, whose: '' },
    ]
    const day = live()
    expect(momentWindow(day.session(), facts({ cooks }), 'hero', 'first-slice')).toEqual(planned)
    day.forecast(10, forecastOf({ 'first-slice': 84 }, 2))
    const { early, likely, late } = momentWindow(day.session(), facts({ cooks }), 'hero', 'first-slice')
    expect([likely, (likely ?? 0) - (early ?? 0)]).toEqual([at(84), (late ?? 0) - (likely ?? 0)])
    day.line(86, mark(86, 'first-slice'))
    expect(momentWindow(day.session(), facts({ cooks }), 'hero', 'first-slice').likely).toBe(at(86))
  })

  it('says what calls sooner than the clock', () => {
    const day = live(sessionDayWith({ calls: [call('first-cut', 'first-slice', { trigger: celsius(43) })] }))
    day.tick(10)
    const duty = dutiesOf(day.session(), facts(), 'presenter').find(({ kind }) => kind === 'call')
    expect(duty && doWords(duty, 'metric')).toBe('You are in shot at the table. Go earlier if the probe reads 43 °C.')
    expect(duty && doWords(duty, 'us')).toContain('109 °F')
  })

  it('counts in days, hours, minutes, then seconds, and says "now" when it has come', () => {
    const told = (ms: number) =>
      countParts(ms as Instant, 0 as Instant)
        .map(({ text }) => text)
        .join(' ')
    expect([0, 61_000, 599_000, 600_000, 43 * 60_000, 125 * 60_000, 50 * 3_600_000].map(told)).toEqual([
      'now',
      '1:01',
      '9:59',
      '10 min',
      '43 min',
      '2 h 05',
      '2 days',
    ])
    expect(countSpoken(30_000 as Instant, 0 as Instant)).toBe('less than a minute')
    expect(agoWords(at(0), at(4))).toBe('4 min ago')
  })
})
