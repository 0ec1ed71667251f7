import type { Line } from '../../../lib/log/log'
import type { MomentId } from '../../../lib/model/moment-ids'
import { type Chance, chanceOf } from '../../../lib/model/random'
import { reduce } from '../../../lib/session/reduce'
import { type Effect, type Expected, openSession, type Session, type SessionEvent } from '../../../lib/session/session'
import type { SessionCall } from '../../../lib/session/session-day'
import { celsius, minutes } from '../../../lib/units'
import { at, line, mark, reading } from '../log/lines'
import { call, forecastOf, type Sound, sessionDayWith } from './made-up-day'

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

const ORDER = ['meat-on', 'turn', 'probe-in', 'vents-open', 'sear-start', 'off-heat', 'first-slice'] as const
type Lived = (typeof ORDER)[number]
const PLANNED: ReadonlySet<MomentId> = new Set(['meat-on', 'turn', 'probe-in'])
/** The cook and the presenter are two on this set: one works, one speaks. */
const PEOPLE = [
  { id: 'presenter', roles: ['presenter'] },
  { id: 'second-cook', roles: ['cook'] },
  { id: 'cam-1', roles: ['camera'] },
  { id: 'cam-2', roles: ['camera', 'sound'] },
  { id: 'producer', roles: ['producer'] },
]
const CALLS: readonly SessionCall[] = [
  call('turning', 'turn', { people: ['cam-1', 'presenter'], standby: null }),
  call('probe', 'probe-in', { people: ['cam-2', 'presenter'], standby: null }),
  call('searing', 'sear-start', { people: ['cam-1', 'presenter'], standby: null }),
  call('first-cut', 'first-slice', { people: ['cam-1', 'presenter'], standby: null, trigger: celsius(60) }),
]
const DAY = {
  ...sessionDayWith(),
  people: PEOPLE,
  calls: CALLS,
  shots: Object.fromEntries(
    CALLS.map(({ shot, people }) => [shot, { title: shot, operators: people.slice(0, 1), inShot: people.slice(1) }]),
  ),
  meals: [{ start: at(60), people: PEOPLE.map(({ id }) => id) }],
}
const STEP_MIN = 0.25
const FORECAST_EACH_MIN = 5
const RELEASE_MIN = 15
const SETUP_MIN = 8

/** When everything really happens, minutes after noon. */
function truthOf(seed: number): { readonly times: Record<Lived, number>; readonly pull: number } {
  const { normal, uniform } = chanceOf(seed, 0, 63)
  const pull = 150 + 25 * normal()
  const vents = pull + 0.5
  const sear = vents + 6 + 2 * uniform()
  const off = sear + 4 + 4 * uniform()
  const [turn, slice] = [0.5 * pull, off + 20 + 5 * uniform()]
  const after = { 'vents-open': vents, 'sear-start': sear, 'off-heat': off, 'first-slice': slice }
  return { pull, times: { 'meat-on': 20, turn, 'probe-in': turn + 8, ...after } }
}

/**
 * A day whose cook runs otherwise than forecast by a normal error that shrinks as it comes near (its `sd` told rightly,
 * held within 1.6 of them); people answer within a minute or two, come within their release time, roll when told, and
 * mark what happens.
 */
export function playDay(seed: number): Played {
  return new Playing(seed).play()
}

class Playing {
  readonly #seed: number
  readonly #truth: ReturnType<typeof truthOf>
  readonly #chance: Chance
  /** One error a day for all that follows from the roast, one more a moment. */
  readonly #error: { readonly common: number; readonly own: ReadonlyMap<Lived, number> }
  #session: Session = openSession(DAY)
  readonly #queue: { readonly min: number; readonly make: (min: number) => Line }[] = []
  readonly #effects: { readonly min: number; readonly effect: Effect }[] = []
  readonly #ready = new Map<string, number>()
  readonly #told = new Map<string, number>()
  readonly #loud: string[] = []

  constructor(seed: number) {
    this.#seed = seed
    this.#truth = truthOf(seed)
    this.#chance = chanceOf(seed, 1, 64)
    const { normal } = this.#chance
    this.#error = { common: normal(), own: new Map(ORDER.map((moment) => [moment, normal()])) }
  }

  play(): Played {
    const { times } = this.#truth
    for (const moment of ORDER) this.#queue.push({ min: times[moment] + 0.1, make: (min) => mark(min, moment) })
    this.#queue.push({ min: times['off-heat'] + 7, make: (min) => reading(min, 58) })
    const end = times['first-slice'] + 15
    for (let min = 0; min <= end; min += STEP_MIN) {
      if (min % FORECAST_EACH_MIN === 0)
        this.#send({ id: `f-${min}`, at: at(min), kind: 'forecast', forecast: this.#forecast(min) }, min)
      for (const due of this.#queue.filter((one) => one.min <= min)) {
        this.#queue.splice(this.#queue.indexOf(due), 1)
        const made = due.make(due.min)
        this.#send({ id: made.entry.id, at: at(min), kind: 'line', line: made }, min)
      }
      this.#send({ id: `t-${min}`, at: at(min), kind: 'tick' }, min)
    }
    return this.#sum(end)
  }

  #send(event: SessionEvent, min: number): void {
    const [next, made] = reduce(this.#session, event)
    this.#session = next
    for (const effect of made) {
      this.#effects.push({ min, effect })
      if (effect.do === 'sound-alert') this.#hear(effect, min)
    }
  }

  #hear(effect: Sound, min: number): void {
    const rolling = this.#session.told.takes.some((take) => take.rolling)
    if (rolling && effect.channels.includes('sound')) this.#loud.push(`${this.#seed} ${effect.key}`)
    if (!this.#told.has(effect.call)) this.#told.set(effect.call, min)
    const { uniform } = this.#chance
    const soon = () => min + 0.3 + uniform()
    const of = CALLS.find(({ id }) => id === effect.call)
    if (of && effect.tone === 'standby') {
      for (const person of of.people) this.#answer(soon(), effect.call, person)
      this.#ready.set(of.shot, min + RELEASE_MIN * uniform() + SETUP_MIN)
    } else if (of) this.#roll(of, min)
    else this.#answer(soon(), effect.call, effect.owner)
    if (effect.call.startsWith('meal'))
      this.#queue.push({ min: min + 8, make: (m) => line(m, 'meal', { is: 'begins' }) })
  }

  #answer(min: number, what: string, person: string): void {
    const make = (m: number) =>
      line(m, 'call-answer', { call: what, answer: 'coming' }, { person, device: `phone-${person}` })
    this.#queue.push({ min, make })
  }

  #roll({ shot, moment }: SessionCall, min: number): void {
    const from = Math.max(min + 0.1, this.#ready.get(shot) ?? min)
    const end = Math.max(from, this.#truth.times[moment as Lived]) + 2.5
    const take = (roll: 'start' | 'end') => (m: number) => line(m, 'take', { shot, take: 1, camera: 'A', roll })
    this.#queue.push({ min: from, make: take('start') }, { min: end, make: take('end') })
  }

  #forecast(min: number) {
    const { times, pull } = this.#truth
    const expected = ORDER.flatMap((moment): Expected[] => {
      const when = times[moment]
      if (when <= min) return []
      const own = this.#error.own.get(moment) as number
      const planned = PLANNED.has(moment)
      const sd = planned ? 0.5 : Math.max(0.3, 0.06 * (Math.min(pull, when) - min)) + (when > pull ? 0.8 : 0)
      const z = Math.max(-1.6, Math.min(1.6, planned ? own : 0.9 * this.#error.common + 0.4 * own))
      return [{ cook: 'hero', moment, likely: at(when + sd * z), sd: minutes(sd) }]
    })
    return { ...forecastOf({}), expected }
  }

  #sum(end: number): Played {
    const { times } = this.#truth
    const stateOf = ({ id }: SessionCall) => this.#session.calls[id]?.state
    const sounded = this.#effects.flatMap(({ min, effect }) =>
      effect.do === 'sound-alert' ? effect.to.map((who) => ({ who, min })) : [],
    )
    const of = (who: string) => sounded.filter((one) => one.who === who).map(({ min }) => min)
    const inTen = (all: readonly number[], min: number) => all.filter((one) => one > min - 10 && one <= min).length
    const toldAt = (moment: Lived) => this.#told.get(`${moment}/hero`) ?? Number.POSITIVE_INFINITY
    return {
      missed: CALLS.filter((one) => stateOf(one) !== 'caught').map(
        (one) => `${this.#seed} ${one.shot}: ${stateOf(one)}, ready ${this.#ready.get(one.shot)}`,
      ),
      late: ORDER.slice(1)
        .filter((moment) => toldAt(moment) > times[moment])
        .map((moment) => `${this.#seed} ${moment}: told ${toldAt(moment)}, was ${times[moment]}`),
      loudInTake: this.#loud,
      perTenMin: PEOPLE.map(({ id }) => (10 * of(id).length) / end),
      worstTenMin: Math.max(0, ...PEOPLE.flatMap(({ id }) => of(id).map((min) => inTen(of(id), min)))),
      signature: this.#effects.map(({ min, effect }) => `${min} ${effect.key}`).join(),
    }
  }
}
