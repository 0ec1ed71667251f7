import { describe, expect, it } from 'vitest'
import { answersTo } from '../../../lib/session/calls'
import { celsius, minutes } from '../../../lib/units'
import { at, line, mark, reading } from '../log/lines'
import { call, forecastOf, live, sessionDayWith, sounds, toldOf } from './made-up-day'

const take = (min: number, rest: object, shot = 'first-cut') =>
  line(min, 'take', { shot, take: 1, camera: 'A', ...rest })
const stateOf = (day: ReturnType<typeof live>, id = 'call-first-cut') => day.session().calls[id]?.state
const firstCut = (changes: Parameters<typeof call>[2]) =>
  sessionDayWith({ calls: [call('first-cut', 'first-slice', changes)] })

describe('a call', () => {
  it('goes out as soon as the early end of what is likely comes within release, setup and lead', () => {
    const day = live()
    day.forecast(0, forecastOf({ 'first-slice': 100 }, 5))
    // 100 − 1.645 · 5 − (15 + 8 + 1) = 67.8 min.
    expect(toldOf(day.run(0.5, 67.5))).toEqual([])
    expect(toldOf(day.run(68, 68))).toEqual(['standby call-first-cut -> cam-1'])
    expect(stateOf(day)).toBe('standby')
    expect(toldOf(day.run(68.5, 70.5))).toEqual([])
  })
  it('goes out by the probe alone where no forecast comes', () => {
    const day = live(firstCut({ trigger: celsius(40), standby: null }))
    expect(toldOf(day.line(10, reading(10, 39.9)))).toEqual([])
    expect(toldOf(day.line(11, reading(11, 40)))).toEqual(['standby call-first-cut -> cam-1'])
  })
  it('is not called by a probe that was pulled out or declared wrong', () => {
    const day = live(firstCut({ trigger: celsius(40), standby: null }))
    day.line(9, line(9, 'probe-check', { cook: 'hero', sensor: 'core', found: 'wrong' }))
    expect(toldOf(day.line(10, reading(10, 90)))).toEqual([])
  })
  it('follows an earlier moment once that is marked', () => {
    const day = live(firstCut({ follows: { moment: 'off-heat', after: minutes(3) }, standby: null }))
    day.line(50, mark(50, 'off-heat'))
    expect(toldOf(day.run(50, 52.5))).toEqual([])
    expect(toldOf(day.run(53, 53))).toEqual(['standby call-first-cut -> cam-1'])
  })
  it('by the clock goes out at its time where nothing else is known', () => {
    const day = live()
    expect(toldOf(day.run(59, 59.5))).toEqual([])
    expect(toldOf(day.run(60, 60))).toEqual(['standby call-first-cut -> cam-1'])
  })
  it('that moves by five minutes or more is told with the reason, without a sound', () => {
    const day = live()
    const first = day.forecast(0, forecastOf({ 'first-slice': 150 }))
    expect(first.filter((one) => one.do === 'move-call')).toMatchObject([
      { call: 'call-first-cut', from: at(60), to: at(126), reason: 'the probe reads 2 °C above the forecast' },
    ])
    expect(day.forecast(5, forecastOf({ 'first-slice': 154 })).map((one) => one.do)).toEqual(['save-forecast'])
    expect(day.forecast(9, forecastOf({ 'first-slice': 155 })).map((one) => one.do)).toEqual([
      'save-forecast',
      'move-call',
    ])
    expect(sounds(day.all)).toEqual([])
  })
  it('rolls when its lead before the moment begins, and is caught by a take over the mark', () => {
    const day = live()
    day.forecast(0, forecastOf({ 'first-slice': 30 }, 1))
    for (const person of ['cam-1', 'presenter'])
      day.line(7, line(7, 'call-answer', { call: 'call-first-cut', answer: 'coming' }, { person }))
    expect(toldOf(day.run(8, 29)).filter((one) => one.startsWith('roll'))).toEqual(['roll call-first-cut -> cam-1'])
    day.line(29, take(29, { roll: 'start' }))
    day.line(31, mark(31, 'first-slice'))
    expect(stateOf(day)).toBe('roll')
    day.line(33, take(33, { roll: 'end' }))
    expect(stateOf(day)).toBe('caught')
  })
  it('is missed when the moment has passed without a take', () => {
    const day = live()
    day.forecast(0, forecastOf({ 'first-slice': 30 }, 1))
    day.run(1, 30)
    day.line(30, mark(30, 'first-slice'))
    day.run(30, 34)
    expect(stateOf(day)).toBe('roll')
    day.run(34.5, 34.5)
    expect(stateOf(day)).toBe('missed')
  })
  it('counts as caught after all once its take comes from a phone that was cut off', () => {
    const day = live()
    day.forecast(0, forecastOf({ 'first-slice': 30 }, 1))
    day.run(1, 30)
    day.line(30, mark(30, 'first-slice'))
    day.run(30, 35)
    expect(stateOf(day)).toBe('missed')
    day.line(36, take(29, { roll: 'start' }))
    day.line(36, take(31, { roll: 'end' }))
    expect(stateOf(day)).toBe('caught')
  })
  it('that was dropped or caught by hand says nothing more', () => {
    const day = live()
    day.line(1, line(1, 'shot-state', { shot: 'first-cut', state: 'dropped' }))
    day.forecast(2, forecastOf({ 'first-slice': 20 }))
    expect(toldOf(day.run(2, 25)).filter((one) => one.includes('first-cut'))).toEqual([])
    expect(stateOf(day)).toBe('dropped')
  })
  it('that was dropped while people stood by, and is taken back, calls and asks them anew', () => {
    const day = live()
    day.forecast(0, forecastOf({ 'first-slice': 100 }, 5))
    day.run(68, 68)
    day.line(69, line(69, 'call-answer', { call: 'call-first-cut', answer: 'coming' }, { person: 'cam-1' }))
    day.line(70, line(70, 'shot-state', { shot: 'first-cut', state: 'dropped' }))
    day.run(70.5, 71)
    expect(toldOf(day.line(72, line(72, 'shot-state', { shot: 'first-cut', state: 'ahead' })))).toEqual([
      'standby call-first-cut -> cam-1',
    ])
    expect(answersTo(day.session(), 'call-first-cut')).toEqual([])
    expect(sounds(day.all).map(({ key }) => key)).toEqual(['standby/call-first-cut', 'standby/call-first-cut/again-1'])
  })
  it('that was missed by a mark which is taken back is called again', () => {
    const day = live()
    day.forecast(0, forecastOf({ 'first-slice': 100 }, 5))
    const wrong = mark(10, 'first-slice')
    day.line(10, wrong)
    day.run(11, 18)
    expect(stateOf(day)).toBe('missed')
    day.line(19, line(19, 'correction', { corrects: wrong.document.id, void: true }))
    day.forecast(19.5, forecastOf({ 'first-slice': 100 }, 5))
    expect(stateOf(day)).toBe('ahead')
    expect(toldOf(day.run(68, 68))).toEqual(['standby call-first-cut -> cam-1'])
  })
  it('can be called by hand before its time', () => {
    const day = live()
    day.forecast(0, forecastOf({ 'first-slice': 150 }))
    expect(toldOf(day.line(5, line(5, 'shot-state', { shot: 'first-cut', state: 'standby' })))).toEqual([
      'standby call-first-cut -> cam-1',
    ])
  })
  it('of a day that was laid out anew counts as told at its new time', () => {
    const day = live()
    day.forecast(0, forecastOf({ 'first-slice': 150 }))
    const adopted = firstCut({ standby: at(120), likely: at(150) })
    expect(day.send({ id: 'day-2', at: at(1), kind: 'day', day: adopted })).toEqual([])
    expect(day.forecast(2, forecastOf({ 'first-slice': 154 })).map((one) => one.do)).toEqual(['save-forecast'])
    expect(day.forecast(3, forecastOf({ 'first-slice': 165 }))).toMatchObject([
      { do: 'save-forecast' },
      { do: 'move-call', key: 'move/call-first-cut/2', from: at(120), to: at(135) },
    ])
  })
  it('of people who are all in shot is owned by somebody off camera', () => {
    const day = live(firstCut({ people: ['stylist'], trigger: celsius(40), standby: null }))
    day.line(1, take(1, { roll: 'start' }, 'herbs'))
    const [sound] = sounds(day.line(2, reading(2, 41)))
    expect(sound).toMatchObject({ owner: 'presenter', to: ['stylist', 'presenter'], channels: ['screen', 'vibration'] })
  })
})
