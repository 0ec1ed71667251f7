import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reduce, replay } from '../../lib/session/reduce'
import { type Effect, openSession, type Session, type SessionEvent } from '../../lib/session/session'
import { inShot } from '../../lib/session/who'
import { celsius, minutes } from '../../lib/units'
import { at, line, mark, newId, reading } from '../unit/log/lines'
import { call, forecastOf, sessionDayWith } from '../unit/session/made-up-day'
import { type Played, playDay } from '../unit/session/play-day'

const day = sessionDayWith({
  calls: [
    call('first-cut', 'first-slice', { trigger: celsius(44) }),
    call('herbs', 'off-heat', {
      follows: { moment: 'pull', after: minutes(2) },
      people: ['stylist', 'cam-2'],
      standby: null,
    }),
  ],
  meals: [{ start: at(200), people: ['cam-1'] }],
})
const PEOPLE = day.people.map(({ id }) => id)
const minute = fc.integer({ min: 0, max: 300 })
const person = fc.constantFrom(...PEOPLE)
const moment = fc.constantFrom(
  'turn' as const,
  'probe-in' as const,
  'pull' as const,
  'vents-open' as const,
  'off-heat' as const,
  'first-slice' as const,
)
const shot = fc.constantFrom('first-cut', 'herbs')

type Make = (min: number) => SessionEvent
const lineEvent =
  (make: (min: number) => ReturnType<typeof line>): Make =>
  (min) => {
    const made = make(min)
    return { id: made.entry.id, at: at(min), kind: 'line', line: made }
  }
const what: fc.Arbitrary<Make> = fc.oneof(
  { weight: 4, arbitrary: fc.constant<Make>((min) => ({ id: newId(min), at: at(min), kind: 'tick' })) },
  fc.integer({ min: 0, max: 60 }).map((c) => lineEvent((min) => reading(min, c))),
  moment.map((m) => lineEvent((min) => mark(min, m))),
  fc
    .tuple(shot, fc.constantFrom('start', 'end'))
    .map(([s, roll]) => lineEvent((min) => line(min, 'take', { shot: s, take: 1, camera: 'A', roll }))),
  fc
    .tuple(
      fc.constantFrom('call-first-cut', 'off-heat/hero', 'turn/hero', 'meal/0'),
      fc.constantFrom('coming', 'cannot', 'hand-over'),
      person,
      person,
    )
    .map(([of, answer, by, to]) =>
      lineEvent((min) => line(min, 'call-answer', { call: of, answer, to }, { person: by })),
    ),
  fc.tuple(moment, minute, fc.integer({ min: 0, max: 20 })).map(
    ([m, likely, sd]): Make =>
      (min) => ({
        id: newId(min),
        at: at(min),
        kind: 'forecast',
        forecast: forecastOf({ [m]: likely, 'first-slice': likely + 30 }, sd),
      }),
  ),
)
/** Events as a server stores them; late lines and all. */
const events = fc
  .array(fc.tuple(what, minute), { minLength: 1, maxLength: 60 })
  .map((made) => made.map(([make, min]) => make(min)))

function each(all: readonly SessionEvent[], see: (effects: readonly Effect[], after: Session) => void) {
  let session = openSession(day)
  for (const event of all) {
    const [next, effects] = reduce(session, event)
    see(effects, next)
    session = next
  }
}
const runs = (numRuns: number, seed: number) => ({ numRuns, seed })

describe('the live session', () => {
  it('gives the same effects and the same state when its events are replayed', () => {
    fc.assert(
      fc.property(events, (all) => {
        expect(JSON.stringify(replay(day, all)[1])).toBe(JSON.stringify(replay(day, all)[1]))
        expect(JSON.stringify(replay(day, all)[0])).toBe(JSON.stringify(replay(day, all)[0]))
      }),
      runs(100, 1),
    )
  })
  it('gives no effect twice, however often an event comes', () => {
    fc.assert(
      fc.property(events, fc.nat(), (all, cut) => {
        const again = [...all, ...all.slice(cut % all.length)]
        const keys = replay(day, again)[1].map(({ key }) => key)
        expect(new Set(keys).size).toBe(keys.length)
      }),
      runs(200, 2),
    )
  })
  it('is silent while a take rolls, and nobody in shot is the only owner of an alert while anybody is off camera', () => {
    fc.assert(
      fc.property(events, (all) => {
        each(all, (effects, after) => {
          const rolling = after.told.takes.some((take) => take.rolling)
          const seen = inShot(after)
          for (const effect of effects) {
            if (effect.do !== 'sound-alert') continue
            if (rolling) expect(effect.channels).not.toContain('sound')
            const byChoice = Object.values(after.told.answers[effect.call] ?? []).some(
              (answer) => answer.to === effect.owner,
            )
            if (!byChoice) expect(seen.has(effect.owner) && effect.to.length === 1).toBe(false)
            expect(effect.to).toContain(effect.owner)
          }
        })
      }),
      runs(300, 3),
    )
  })
})

const DAYS = 40
describe(`each of ${DAYS} made-up days`, () => {
  const days = Array.from({ length: DAYS }, (_, seed) => playDay(seed))
  const all = (of: (played: Played) => readonly string[]) => days.flatMap(of)
  it('misses none of the must-have moments when the crew answers within its release time', () => {
    expect(all((played) => played.missed)).toEqual([])
  })
  it('tells every action before its moment', () => {
    expect(all((played) => played.late)).toEqual([])
  })
  it('alerts nobody more than once in ten minutes on average', () => {
    const loads = days.flatMap((played) => played.perTenMin)
    expect(loads.reduce((a, b) => a + b, 0) / loads.length).toBeLessThan(0.5)
    expect(Math.max(...loads)).toBeLessThanOrEqual(1)
  })
  it('makes no sound while a take rolls', () => {
    expect(all((played) => played.loudInTake)).toEqual([])
  })
  it('is another day', () => {
    expect(new Set(days.map((played) => played.signature)).size).toBe(days.length)
  })
})
