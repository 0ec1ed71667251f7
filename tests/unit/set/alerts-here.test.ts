import { describe, expect, it } from 'vitest'
import { stands } from '../../../app/set/feed/alerts-here'
import type { EntryDocument } from '../../../lib/log/entry'
import { line } from '../log/lines'
import { call, forecastOf, live, sessionDayWith, sounds } from '../session/made-up-day'

const CALL = call('first-cut', 'first-slice')
/** The moment is there, and its call says: roll. */
function rolls() {
  const day = live(sessionDayWith({ calls: [CALL] }))
  day.forecast(70, forecastOf({ 'first-slice': 84 }, 1))
  const effect = sounds([...day.run(70, 84)]).find(({ tone }) => tone === 'roll')
  if (!effect) throw new Error('nothing rolls')
  const raised = { effect, at: day.session().now }
  return { day, open: (person: string) => stands(day.session(), raised, person) }
}
const take = (min: number, roll: EntryDocument) => line(min, 'take', { shot: CALL.shot, take: 1, camera: 'a', ...roll })
const answered = (answer: string, more: EntryDocument = {}) =>
  line(84.1, 'call-answer', { call: CALL.id, answer, ...more }, { person: 'presenter' })

describe('an alert that says roll', () => {
  it.each([
    ['ready', {}],
    ['coming', {}],
    ['cannot', {}],
    ['hand-over', { to: 'stylist' }],
  ])('is over for whoever answers %s, and for nobody else', (answer, more) => {
    const { day, open } = rolls()
    expect([open('presenter'), open('cam-1')]).toEqual([true, true])
    day.line(84.1, answered(answer, more))
    expect([open('presenter'), open('cam-1')]).toEqual([false, true])
  })
  it.each([
    ['good', false],
    ['no-good', true],
  ])('is over for all as soon as a camera rolls; after a take that was %s it waits again: %s', (verdict, again) => {
    const { day, open } = rolls()
    day.line(84.1, take(84.1, { roll: 'start' }))
    expect([open('presenter'), open('cam-1')]).toEqual([false, false])
    day.line(84.6, take(84.6, { roll: 'end', verdict }))
    expect([open('presenter'), open('cam-1')]).toEqual([again, again])
  })
})
