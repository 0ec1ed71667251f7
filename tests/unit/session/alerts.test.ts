import { describe, expect, it } from 'vitest'
import type { MomentId } from '../../../lib/model/moment-ids'
import { undone } from '../../../lib/session/reduce'
import { at, line, mark, reading } from '../log/lines'
import { forecastOf, live, sessionDayWith, sounds, toldOf } from './made-up-day'

const bare = (changes = {}) => live(sessionDayWith({ calls: [], ...changes }))
const answer = (min: number, what: string, rest: object, person = 'presenter') =>
  line(min, 'call-answer', { call: what, ...rest }, { person })
const rolling = (min: number, shot: string) => line(min, 'take', { shot, take: 1, camera: 'A', roll: 'start' })

describe('alerts', () => {
  it.each<[MomentId, string, number]>([
    ['turn', 'Turn the roast.', 3],
    ['probe-in', 'Put the probe in.', 3],
    ['vents-open', 'Open the vents.', 3],
    ['sear-start', 'Start the sear.', 2],
    ['off-heat', 'Take the roast off the heat.', 3],
    ['first-slice', 'Slice.', 5],
  ])('of %s: one owner, one action, one deadline, in time', (moment, action, lead) => {
    const day = bare()
    day.forecast(0, forecastOf({ [moment]: 60 }, 0.5))
    expect(toldOf(day.run(0, 60 - lead - 0.5))).toEqual([])
    expect(sounds(day.run(60 - lead, 60 - lead))).toMatchObject([
      {
        owner: 'presenter',
        to: ['presenter'],
        action,
        deadline: at(60),
        tone: 'trouble',
        channels: ['screen', 'vibration', 'sound'],
      },
    ])
  })
  it('come a walk before the early end of what is likely where the forecast knows less', () => {
    const day = bare()
    day.forecast(0, forecastOf({ 'off-heat': 60 }, 3))
    // 60 − 1.645 · 3 − 1 = 54.1 min.
    expect(toldOf(day.run(0, 54))).toEqual([])
    expect(toldOf(day.run(54.5, 54.5))).toEqual(['trouble off-heat/hero -> presenter'])
  })
  it('of the end of the roast come as soon as the probe reads it, whatever the forecast thinks', () => {
    const day = bare()
    day.forecast(0, forecastOf({ 'vents-open': 90 }))
    expect(toldOf(day.line(20, reading(20, 46)))).toEqual(['trouble vents-open/hero -> presenter'])
  })
  it('end when the moment, or one after it, is marked', () => {
    const day = bare()
    day.forecast(0, forecastOf({ 'vents-open': 10, 'off-heat': 20 }))
    day.run(1, 8)
    expect(day.session().alerts['vents-open/hero']?.state).toBe('open')
    day.line(9, mark(9, 'sear-start'))
    expect(day.session().alerts['vents-open/hero']?.state).toBe('done')
  })
  it('ask for a look at the carryover after off heat, until somebody has read the core', () => {
    const day = bare()
    day.line(10, mark(10, 'off-heat'))
    expect(toldOf(day.run(10, 16))).toEqual(['trouble carryover-check/hero -> presenter'])
    day.line(16, reading(16, 55))
    expect(day.session().alerts['carryover-check/hero']?.state).toBe('done')
  })
  it('tell of low fuel half an hour before it is out, and again after a feeding that was too little', () => {
    const day = bare()
    const fuel = (min: number) => forecastOf({}, 2, { fuelOut: { hero: at(min) } })
    day.forecast(0, fuel(60))
    expect(toldOf(day.run(1, 30))).toEqual(['trouble fuel-low/hero/0 -> presenter'])
    day.line(31, line(31, 'fire', { cook: 'hero', did: 'fed', fuel: '400 g' }))
    expect(day.session().alerts['fuel-low/hero/0']?.state).toBe('done')
    day.forecast(32, fuel(90))
    expect(toldOf(day.run(33, 60))).toEqual(['trouble fuel-low/hero/1 -> presenter'])
  })
  it('tell that food has stood out too long, from the slice or from when it came out, until it is away', () => {
    const day = bare()
    day.line(0, mark(0, 'first-slice'))
    expect(sounds(day.run(1, 100))).toMatchObject([{ owner: 'stylist', deadline: at(120), call: 'food-out/hero/0' }])
    day.line(101, line(101, 'food', { cook: 'hero', is: 'discarded' }))
    expect(day.session().alerts['food-out/hero/0']?.state).toBe('done')
  })
  it('break for a meal that is due', () => {
    const day = bare({ meals: [{ start: at(60), people: ['cam-1'] }] })
    expect(toldOf(day.run(1, 50))).toEqual(['trouble meal/0 -> stylist'])
    day.line(55, line(55, 'meal', { is: 'begins' }))
    expect(day.session().alerts['meal/0']?.state).toBe('done')
  })
  it('pass on what the forecast found wrong, with its one action', () => {
    const day = bare()
    const troubles = [{ id: 'lid-1', cook: 'hero', action: 'Shut the lid.', deadline: at(12) }]
    expect(sounds(day.forecast(10, forecastOf({}, 2, { troubles })))).toMatchObject([
      { action: 'Shut the lid.', owner: 'presenter' },
    ])
  })
})

describe('whoever owns an alert', () => {
  const due = (prepare: (day: ReturnType<typeof live>) => void, min = 8) => {
    const day = bare()
    day.forecast(0, forecastOf({ 'off-heat': 10 }))
    prepare(day)
    return { day, effects: day.run(min - 1, min) }
  }
  it('hears nothing while a take rolls: screen and vibration only', () => {
    const { effects } = due((day) => day.line(1, rolling(1, 'herbs')))
    expect(sounds(effects)).toMatchObject([{ owner: 'presenter', channels: ['screen', 'vibration'] }])
  })
  it('is off camera where the one who could is in shot', () => {
    const { effects } = due((day) => day.line(1, rolling(1, 'first-cut')))
    expect(sounds(effects)).toMatchObject([{ owner: 'cam-2', action: 'See to it: Take the roast off the heat.' }])
  })
  it('who does not answer is followed by another, each asked once', () => {
    const { day, effects } = due(() => undefined, 7)
    expect(toldOf(effects)).toEqual(['trouble off-heat/hero -> presenter'])
    const owners = toldOf(day.run(7.5, 30)).map((one) => one.split(' -> ')[1])
    expect(new Set(owners)).toEqual(new Set(['cam-1', 'cam-2', 'stylist']))
    expect(owners).toHaveLength(3)
  })
  it('who answers keeps it, and nobody else is asked', () => {
    const { day } = due((d) => d.run(1, 7))
    day.line(8, answer(8, 'off-heat/hero', { answer: 'coming' }))
    expect(toldOf(day.run(8.5, 30))).toEqual([])
    expect(day.session().alerts['off-heat/hero']?.state).toBe('acknowledged')
  })
  it('may hand it over, and who takes it is told', () => {
    const { day } = due((d) => d.run(1, 7))
    expect(toldOf(day.line(8, answer(8, 'off-heat/hero', { answer: 'hand-over', to: 'stylist' })))).toEqual([
      'trouble off-heat/hero -> stylist',
    ])
  })
  it('who cannot is followed at once', () => {
    const { day } = due((d) => d.run(1, 7))
    const [next] = sounds(day.line(7.1, answer(7.1, 'off-heat/hero', { answer: 'cannot' })))
    expect(next?.owner).not.toBe('presenter')
  })
  it('is not troubled within ten minutes of another by what can wait, but is before it is too late', () => {
    const day = bare({
      people: [{ id: 'presenter', roles: ['presenter', 'cook'] }],
      meals: [{ start: at(20), people: ['presenter'] }],
    })
    day.forecast(0, forecastOf({ turn: 12 }))
    expect(toldOf(day.run(1, 16.5))).toEqual(['trouble turn/hero -> presenter'])
    expect(toldOf(day.run(17, 17))).toEqual(['trouble meal/0 -> presenter'])
  })
  it('of a call who does not say that they come are fetched', () => {
    const day = live()
    day.forecast(0, forecastOf({ 'first-slice': 40 }, 1))
    day.run(1, 15)
    day.line(15, answer(15, 'call-first-cut', { answer: 'coming' }, 'cam-1'))
    const late = sounds(day.run(15.5, 18)).find((one) => one.call === 'unanswered/call-first-cut')
    expect(late).toMatchObject({ action: 'Fetch presenter for “first-cut”.' })
  })
})

describe('a device that comes back', () => {
  it('does nothing twice: the same events give the same keys, and what is done is left out', () => {
    const day = bare()
    day.forecast(0, forecastOf({ turn: 10 }))
    day.run(1, 10)
    const done = new Set(day.all.map(({ key }) => key))
    expect(done.size).toBe(day.all.length)
    expect(undone(day.all, done)).toEqual([])
  })
  it('keeps each forecast with the one before it and the reason, once', () => {
    const day = bare()
    day.send({ id: 'f-1', at: at(0), kind: 'forecast', forecast: forecastOf({ turn: 60 }) })
    day.send({ id: 'f-2', at: at(1), kind: 'forecast', forecast: forecastOf({ turn: 61 }) })
    day.send({ id: 'f-1', at: at(2), kind: 'forecast', forecast: forecastOf({ turn: 60 }) })
    expect(day.session().history.map(({ id, after }) => [id, after])).toEqual([
      ['f-1', null],
      ['f-2', 'f-1'],
    ])
    expect(day.session().forecast?.id).toBe('f-2')
  })
})
