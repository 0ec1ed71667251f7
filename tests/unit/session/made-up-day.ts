import type { Line } from '../../../lib/log/log'
import type { MomentId } from '../../../lib/model/moment-ids'
import { reduce } from '../../../lib/session/reduce'
import type { Effect, LiveForecast, SessionEvent } from '../../../lib/session/session'
import { openSession } from '../../../lib/session/session'
import type { SessionCall, SessionDay } from '../../../lib/session/session-day'
import { celsius, minutes, seconds } from '../../../lib/units'
import { at } from '../log/lines'

export const call = (shot: string, moment: MomentId, changes: Partial<SessionCall> = {}): SessionCall => ({
  id: `call-${shot}`,
  shot,
  title: shot,
  cook: 'hero',
  moment,
  release: minutes(15),
  setup: minutes(8),
  before: minutes(1),
  after: minutes(2),
  standby: at(60),
  likely: at(84),
  trigger: null,
  follows: null,
  people: ['cam-1', 'presenter'],
  ...changes,
})

/** The demo's crew; minutes count from noon. */
export const sessionDayWith = (changes: Partial<SessionDay> = {}): SessionDay => ({
  people: [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    { id: 'cam-1', roles: ['camera'] },
    { id: 'cam-2', roles: ['camera', 'sound'] },
    { id: 'stylist', roles: ['stylist'] },
  ],
  cooks: [
    {
      id: 'hero',
      moments: [
        'fire-lit',
        'cooker-steady',
        'meat-on',
        'turn',
        'probe-in',
        'pull',
        'vents-open',
        'sear-start',
        'off-heat',
        'carryover-peak',
        'first-slice',
      ],
      names: {},
      pullAt: celsius(46),
      outLimit: seconds(7200),
    },
  ],
  calls: [call('first-cut', 'first-slice')],
  shots: {
    'first-cut': { title: 'first-cut', inShot: ['presenter'], operators: ['cam-1'] },
    herbs: { title: 'herbs', inShot: ['stylist'], operators: ['cam-2'] },
  },
  meals: [],
  ...changes,
})

/** Likely minutes after noon, each with a standard deviation in minutes. */
export const forecastOf = (
  likely: Partial<Record<MomentId, number>>,
  sdMin = 2,
  more: Partial<LiveForecast> = {},
): LiveForecast => ({
  reason: 'the probe reads 2 °C above the forecast',
  expected: Object.entries(likely).map(([moment, min]) => ({
    cook: 'hero',
    moment: moment as MomentId,
    likely: at(min as number),
    sd: minutes(sdMin),
  })),
  ...more,
})

/** A session that is fed in minutes after noon and remembers what it was told to do. */
export function live(day: SessionDay = sessionDayWith()) {
  let session = openSession(day)
  let made = 0
  const all: Effect[] = []
  const send = (event: SessionEvent): readonly Effect[] => {
    const [next, effects] = reduce(session, event)
    session = next
    all.push(...effects)
    return effects
  }
  const id = () => `event-${made++}`
  return {
    all,
    session: () => session,
    send,
    tick: (min: number) => send({ id: id(), at: at(min), kind: 'tick' }),
    line: (min: number, line: Line) => send({ id: line.entry.id, at: at(min), kind: 'line', line }),
    forecast: (min: number, forecast: LiveForecast) => send({ id: id(), at: at(min), kind: 'forecast', forecast }),
    /** Ticks every half minute up to and with `to`. */
    run: (from: number, to: number) => {
      const effects: Effect[] = []
      for (let min = from; min <= to; min += 0.5) effects.push(...send({ id: id(), at: at(min), kind: 'tick' }))
      return effects
    },
  }
}
export type Sound = Extract<Effect, { do: 'sound-alert' }>
export const sounds = (effects: readonly Effect[]): Sound[] =>
  effects.filter((one): one is Sound => one.do === 'sound-alert')
/** "minute tone call -> owner", for tests that read as a list. */
export const toldOf = (effects: readonly Effect[]) =>
  sounds(effects).map(({ tone, call: what, owner }) => `${tone} ${what} -> ${owner}`)
