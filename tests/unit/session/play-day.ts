import type { Line } from '../../../lib/log/log'
import type { MomentId } from '../../../lib/model/moment-ids'
import { chanceOf } from '../../../lib/model/random'
import { momentAt } from '../../../lib/session/calls'
import { reduce } from '../../../lib/session/reduce'
import { type Effect, openSession, type SessionEvent } from '../../../lib/session/session'
import type { SessionCall } from '../../../lib/session/session-day'
import { celsius, minutes } from '../../../lib/units'
import { at, line, mark, reading } from '../log/lines'
import { call, forecastOf, sessionDayWith } from './made-up-day'

/** What a simulated day came to. */
export interface Played {
  readonly missed: readonly string[]
  readonly late: readonly string[]
  readonly loudInTake: readonly string[]
  /** By person, alerts in ten minutes over the whole day; and the most in any ten minutes. */
  readonly perTenMin: readonly number[]
  readonly worstTenMin: number
  readonly signature: string
}

const ORDER: readonly MomentId[] = [
  'meat-on',
  'turn',
  'probe-in',
  'vents-open',
  'sear-start',
  'off-heat',
  'first-slice',
]
/** The cook and the presenter are two on this set: one works, one speaks. */
const PEOPLE = [
  { id: 'presenter', roles: ['presenter'] },
  { id: 'second-cook', roles: ['cook'] },
  { id: 'cam-1', roles: ['camera'] },
  { id: 'cam-2', roles: ['camera', 'sound'] },
  { id: 'producer', roles: ['producer'] },
]
const STEP_MIN = 0.25

/** When everything really happens, minutes after noon. */
function truthOf(seed: number) {
  const { normal, uniform } = chanceOf(seed, 0, 63)
  const pull = 150 + 25 * normal()
  const vents = pull + 0.5
  const sear = vents + 6 + 2 * uniform()
  const off = sear + 4 + 4 * uniform()
  const times: Partial<Record<MomentId, number>> = {
    'meat-on': 20,
    turn: 0.5 * pull,
    'probe-in': 0.5 * pull + 8,
    'vents-open': vents,
    'sear-start': sear,
    'off-heat': off,
    'first-slice': off + 20 + 5 * uniform(),
  }
  return { times, pull }
}

/**
 * A day whose cook runs otherwise than forecast by a normal error that shrinks as it comes near (its `sd` told rightly);
 * people answer within a minute or two, come within their release time, roll when told, and mark what happens.
 */
export function playDay(seed: number): Played {
  const { normal, uniform } = chanceOf(seed, 1, 64)
  const { times, pull } = truthOf(seed)
  const calls: readonly SessionCall[] = [
    call('turning', 'turn', { people: ['cam-1', 'presenter'], standby: null }),
    call('probe', 'probe-in', { people: ['cam-2', 'presenter'], standby: null }),
    call('searing', 'sear-start', { people: ['cam-1', 'presenter'], standby: null }),
    call('first-cut', 'first-slice', { people: ['cam-1', 'presenter'], standby: null, trigger: celsius(60) }),
  ]
  const shots = Object.fromEntries(
    calls.map(({ shot, people }) => [shot, { title: shot, operators: people.slice(0, 1), inShot: people.slice(1) }]),
  )
  const base = sessionDayWith()
  const day = { ...base, people: PEOPLE, calls, shots, meals: [{ start: at(60), people: PEOPLE.map(({ id }) => id) }] }
  let session = openSession(day)
  const effects: { min: number; effect: Effect }[] = []
  const queue: { min: number; make: (min: number) => Line }[] = []
  const ready = new Map<string, number>()
  const late: string[] = []
  const loudInTake: string[] = []
  const told = new Map<string, number>()

  function send(event: SessionEvent, min: number) {
    const [next, made] = reduce(session, event)
    session = next
    for (const effect of made) hear(effect, min)
  }
  function hear(effect: Effect, min: number) {
    effects.push({ min, effect })
    if (effect.do !== 'sound-alert') return
    if (effect.channels.includes('sound') && session.told.takes.some((take) => take.rolling))
      loudInTake.push(`${seed} ${effect.key}`)
    if (!told.has(effect.call)) told.set(effect.call, min)
    const of = calls.find(({ id }) => id === effect.call)
    if (effect.tone === 'standby' && of) {
      for (const who of of.people) answer(min + 0.3 + uniform(), effect.call, who)
      ready.set(of.shot, min + 15 * uniform() + 8)
    } else if (effect.tone === 'roll' && of) roll(of, min)
    else if (effect.tone === 'trouble') answer(min + 0.3 + uniform(), effect.call, effect.owner)
    if (effect.call.startsWith('meal')) queue.push({ min: min + 8, make: (m) => line(m, 'meal', { is: 'begins' }) })
  }
  const answer = (min: number, what: string, who: string) =>
    queue.push({
      min,
      make: (m) => line(m, 'call-answer', { call: what, answer: 'coming' }, { person: who, device: `phone-${who}` }),
    })
  const roll = (of: SessionCall, min: number) => {
    const from = Math.max(min + 0.1, ready.get(of.shot) ?? min)
    const end = Math.max(from, times[of.moment] as number) + 2.5
    const take = (rest: object) => (m: number) => line(m, 'take', { shot: of.shot, take: 1, camera: 'A', ...rest })
    queue.push({ min: from, make: take({ roll: 'start' }) }, { min: end, make: take({ roll: 'end' }) })
  }
  for (const moment of ORDER) {
    const when = times[moment] as number
    queue.push({ min: when + 0.1, make: (m) => mark(m, moment) })
    if (moment === 'off-heat') queue.push({ min: when + 7, make: (m) => reading(m, 58) })
  }
  const end = (times['first-slice'] as number) + 15
  // One error a day for all that follows from the roast, one more a moment.
  const common = normal()
  const own = new Map(ORDER.map((moment) => [moment, normal()]))
  for (let min = 0; min <= end; min += STEP_MIN) {
    if (min % 5 === 0) send({ id: `f-${min}`, at: at(min), kind: 'forecast', forecast: forecast(min) }, min)
    for (const due of queue.filter((one) => one.min <= min)) {
      queue.splice(queue.indexOf(due), 1)
      const made = due.make(due.min)
      send({ id: made.entry.id, at: at(min), kind: 'line', line: made }, min)
    }
    send({ id: `t-${min}`, at: at(min), kind: 'tick' }, min)
  }
  /** Each expected with its error, in standard deviations as they are told. */
  function forecast(min: number) {
    const expected = ORDER.flatMap((moment) => {
      const when = times[moment] as number
      if (when <= min) return []
      const planned = moment === 'turn' || moment === 'probe-in' || moment === 'meat-on'
      const sd = planned ? 0.5 : Math.max(0.3, 0.06 * (Math.min(pull, when) - min)) + (when > pull ? 0.8 : 0)
      const z = Math.max(
        -1.6,
        Math.min(1.6, planned ? (own.get(moment) as number) : 0.9 * common + 0.4 * (own.get(moment) as number)),
      )
      return [{ cook: 'hero', moment, likely: at(when + sd * z), sd: minutes(sd) }]
    })
    return { ...forecastOf({}), expected }
  }
  for (const moment of ORDER.slice(1)) {
    const when = told.get(`${moment}/hero`)
    if (when === undefined || when > (times[moment] as number))
      late.push(`${seed} ${moment}: ${when ?? 'never'} for ${times[moment]}`)
  }
  const missed = calls.flatMap((one) =>
    session.calls[one.id]?.state === 'caught'
      ? []
      : [
          `${seed} ${one.shot}: ${session.calls[one.id]?.state} ready ${ready.get(one.shot)} for ${times[one.moment]} ${momentAt(session, one)}`,
        ],
  )
  const alerts = effects.flatMap(({ min, effect }) =>
    effect.do === 'sound-alert' ? effect.to.map((who) => ({ who, min })) : [],
  )
  const of = (who: string) => alerts.filter((one) => one.who === who)
  const windows = PEOPLE.flatMap(({ id }) =>
    of(id).map(({ min }) => of(id).filter((one) => one.min > min - 10 && one.min <= min).length),
  )
  return {
    missed,
    late,
    loudInTake,
    perTenMin: PEOPLE.map(({ id }) => (10 * of(id).length) / end),
    worstTenMin: Math.max(0, ...windows),
    signature: effects.map(({ min, effect }) => `${min} ${effect.key}`).join(),
  }
}
