import { describe, expect, it } from 'vitest'
import { foldLog } from '../../../lib/log/fold'
import type { Shoot } from '../../../lib/plan/shoot'
import { minutes, seconds } from '../../../lib/units'
import { callRows } from '../../../lib/wrap/calls'
import { headlines, windowSentence } from '../../../lib/wrap/headline'
import { memorySentence } from '../../../lib/wrap/memory-words'
import { momentRows } from '../../../lib/wrap/moments'
import { nextTime } from '../../../lib/wrap/next-time'
import { peopleRows } from '../../../lib/wrap/people'
import { whyMissed } from '../../../lib/wrap/takes'
import { boardBy, type ToldCall } from '../../../lib/wrap/told'
import { at, line, logOf, mark, reading } from '../log/lines'
import { lamb, read } from '../plan/shoots'

const shoot: Shoot = read(lamb())
const answer = (min: number, call: string, person: string, said: string) =>
  line(min, 'call-answer', { call, answer: said }, { person })
const take = (min: number, shot: string, rest: Record<string, unknown>) =>
  line(min, 'take', { shot, slate: '1', camera: 'A', ...rest })

const LINES = [
  mark(0, 'meat-on'),
  mark(113, 'pull'),
  mark(140, 'first-slice'),
  ...[60, 100, 112].map((min) => reading(min, 30 + min / 8)),
  ...[120, 126, 132, 138].map((min, i) => reading(min, [50, 51.4, 51.8, 51.2][i] as number)),
  mark(116, 'off-heat'),
  take(112, 'display', { take: 1, roll: 'start' }),
  take(113, 'display', { take: 1, roll: 'end', verdict: 'no-good', note: 'Soft.' }),
  take(114, 'display', { take: 2, roll: 'start' }),
  take(115, 'display', { take: 2, roll: 'end', verdict: 'good' }),
  line(141, 'shot-state', { shot: 'first-cut', state: 'missed', why: 'The van was in the way.' }),
  answer(90, 'call-display', 'cam-1', 'coming'),
  answer(95, 'call-display', 'cam-1', 'ready'),
  answer(115, 'call-display', 'cam-2', 'ready'),
  line(30, 'meal', { is: 'begins', people: ['cam-1'] }),
  line(50, 'meal', { is: 'ends', people: ['cam-1'] }),
]
const day = foldLog(logOf(...LINES))
const span = (early: number, likely: number, late: number) => ({ early: at(early), likely: at(likely), late: at(late) })
const morning = {
  hero: { 'meat-on': span(0, 0, 0), pull: span(80, 100, 125), 'first-slice': span(100, 127, 135) },
}
const told = [40, 52, 60].map((min) => ({
  at: at(min),
  forecast: {
    expected: [{ cook: 'hero', moment: 'pull' as const, likely: at(min === 52 ? 110 : 0), sd: minutes(6) }],
  },
}))
const board = boardBy(told, at(53))
const rows = momentRows({ shoot, day, morning, board, why: whyMissed(LINES) })
const row = (moment: string) => rows.find((one) => one.moment === moment)

describe('forecast against fact', () => {
  it('holds each moment against this morning and against the board as it stood at the hour asked for', () => {
    expect(row('pull')).toMatchObject({
      happened: at(113),
      offMorning: 13 * 60,
      offBoard: 3 * 60,
      fell: 'inside',
      takes: '2 takes, 1 good',
      onCamera: true,
    })
    expect(row('first-slice')).toMatchObject({
      fell: 'after',
      offBoard: null,
      takes: 'missed: the van was in the way',
      onCamera: false,
    })
    expect(row('meat-on')?.fell).toBeNull()
  })
  it('sees the carryover peak in the readings, where the probe was left in until it had turned', () => {
    expect(row('carryover-peak')?.happened).toBe(at(132))
  })
  it('says it in one headline and one sentence', () => {
    expect(headlines(rows, 'hero', board, 'UTC')).toEqual([
      'Thirteen minutes later than planned.',
      'Within three minutes of what the board said at 12:52.',
    ])
    expect(windowSentence(rows)).toBe('All but first slice fell inside the window. One of eleven moments is on camera.')
    const late = rows.map((one) => ({ ...one, fell: one.fell && ('after' as const), onCamera: false }))
    expect(windowSentence(late)).toBe('No moment fell inside its window. None of eleven moments is on camera.')
  })
})

describe('calls and people', () => {
  const call: ToldCall = {
    id: 'call-display',
    shot: 'display',
    title: 'Probe display',
    cook: 'hero',
    moment: 'pull',
    people: ['cam-1', 'cam-2', 'presenter'],
    standby: at(92),
    called: at(89),
    why: 'it may come soon',
    state: 'caught',
  }
  const calls = callRows([call], day)
  it('tell how long each stood, who was late and who never answered', () => {
    expect(calls[0]).toMatchObject({ happened: at(113), outcome: 'caught', stood: 18 * 60 })
    expect(calls[0]?.people).toMatchObject([
      { person: 'cam-1', answered: at(90), stood: 18 * 60, late: null },
      { person: 'cam-2', stood: 0, late: 2 * 60 },
      { person: 'presenter', answered: null, ready: null },
    ])
  })
  it('count for each person what they answered, stood, ate and saw to', () => {
    const people = peopleRows({
      shoot,
      day,
      calls,
      meals: [{ start: at(15), people: ['cam-1', 'cam-2'] }],
      alerts: [
        { owner: 'cam-1', asked: ['presenter', 'cam-1'], state: 'done' },
        { owner: 'presenter', asked: ['presenter'], state: 'done' },
        { owner: 'presenter', asked: ['presenter'], state: 'open' },
      ],
    })
    const of = (id: string) => people.find(({ person }) => person === id)
    expect(of('cam-1')).toMatchObject({ calls: 1, answered: 1, late: 0, stood: 18 * 60, alerts: 1, passedOn: 0 })
    expect(of('cam-1')?.meals).toEqual([{ begun: at(30), off: 15 * 60 }])
    expect(of('cam-2')).toMatchObject({ late: 1, latest: 120, meals: [], mealsPlanned: 1 })
    expect(of('presenter')).toMatchObject({ calls: 1, answered: 0, alerts: 1, unanswered: 1, passedOn: 1 })
    expect(of('stylist')).toMatchObject({ calls: 0, mealsPlanned: 0 })
  })
})

describe('next time', () => {
  const none = { why: null, levelK: null, asked: null, rows, narrows: null, burns: true, units: 'metric' as const }
  const times = { pullS: minutes(113), offS: minutes(116), sliceS: minutes(140) }
  it('turns the dial by what the cooker is off, and asks for the probe where it was not read', () => {
    expect(nextTime({ ...none, ...times, levelK: -7 as never, asked: 150 as never, readings: [] })).toEqual([
      'Set the dial to 157 °C for 150 °C at the meat.',
      'Leave the probe in through the rest: nothing was read after the fire.',
      'Put a probe in: nothing was read in the meat before the pull.',
    ])
  })
  it('finds the longest time without a reading, and nothing to say of a well read cook', () => {
    const core = (min: number) => ({ t: minutes(min), sensor: 'core' as const, tempC: 40 as never })
    const read = (...min: number[]) => nextTime({ ...none, ...times, readings: min.map(core) })
    expect(read(60, 95, 110, 130)).toEqual(['Read the probe every ten minutes: 35 minutes went by without.'])
    expect(read(90, 105, 130)).toEqual([])
  })
  it('says what is remembered of a cooker', () => {
    const memory = { cooks: 3, level: { mean: -6.2, sd: 3.1 }, pace: { mean: 0.04, sd: 0.02 } }
    expect(memorySentence({ ...memory, warmUp: { mean: seconds(2880), sd: 200 } }, 'metric')).toBe(
      'It runs 6 °C under its dial, give or take 3. A roast takes 4 % longer in it. It is steady 48 minutes after it is lit.',
    )
    expect(memorySentence({ ...memory, level: { mean: 0.4, sd: 2 }, pace: { mean: 0, sd: 0.02 } }, 'us')).toBe(
      'It keeps to its dial, give or take 4.',
    )
  })
})
