import { standing } from '../log/corrections'
import type { DayState } from '../log/day-state'
import type { EntryDocument } from '../log/entry'
import { type EntryId, entryId, RANDOM_BYTES } from '../log/entry-id'
import { whenText } from '../log/entry-words'
import { EMPTY_LOG, type Line, merge } from '../log/log'
import { readEntry } from '../log/read-entry'
import { chanceOf } from '../model/random'
import { type Instant, instant, later, minutes, seconds } from '../units'
import { crewAnswers } from './made-up-crew'
import { reduce } from './reduce'
import { type Effect, type LiveForecast, openSession, type Session } from './session'
import type { SessionDay } from './session-day'

/** A forecast that is told at a time of the day. */
export interface TimedForecast {
  readonly at: Instant
  readonly forecast: LiveForecast
}
export interface DayToPlay {
  readonly day: SessionDay
  readonly lines: readonly Line[]
  /** Those that were told, or when some are to be made and how. */
  readonly forecasts: readonly TimedForecast[] | { readonly at: readonly Instant[]; readonly make: Forecaster }
  /** An invented crew answers its calls; a day that was has its answers in its log. */
  readonly crewSeed: number | null
}
export type Forecaster = (told: DayState, now: Instant, before: LiveForecast | null) => LiveForecast
/** A day at its end: what the rule book made of it, and all that was told and done on the way. */
export interface PlayedOut {
  readonly session: Session
  readonly lines: readonly Line[]
  readonly forecasts: readonly TimedForecast[]
  readonly effects: readonly Effect[]
}

/** What happened is heard of so late at most; on a day of more than five hours later, for each step folds its log anew. */
const STEP_S = 30
const MOST_STEPS = 600
const AFTER_MIN = 10
const STREAM = 74

/** By entry, when it was by the server's clock. */
export const timesOf = (lines: readonly Line[]): ReadonlyMap<EntryId, Instant> =>
  new Map(standing(merge(EMPTY_LOG, lines)).entries.map(({ entry, at }) => [entry.id, at]))

/** Plays a day through the rule book from its first line to ten minutes after its last. */
export function playedOut(input: DayToPlay): PlayedOut {
  const times = timesOf(input.lines)
  // What the crew answers on the way is timed as it is.
  const at = ({ entry }: Line) => times.get(entry.id) ?? entry.at
  const inTime = (one: Line, other: Line) => at(one) - at(other)
  let waiting = [...input.lines].sort(inTime)
  const first = waiting[0] && at(waiting[0])
  const { forecasts } = input
  const due = 'make' in forecasts ? forecasts.at.map((at) => ({ at, forecast: null })) : [...forecasts]
  due.sort((a, b) => a.at - b.at)
  const play = new Play(input)
  if (first === undefined) return play.over()
  const end = later(at(waiting.at(-1) as Line), minutes(AFTER_MIN))
  const stepS = seconds(Math.max(STEP_S, Math.ceil((end - first) / 1000 / MOST_STEPS)))
  for (let now = instant(Math.ceil(first / 1000) * 1000); now <= end; now = later(now, stepS)) {
    const come = waiting.filter((one) => at(one) <= now)
    waiting = waiting.slice(come.length)
    const answers = play.step(now, come)
    while ((due[0]?.at ?? Infinity) <= now) answers.push(...play.forecast(now, due.shift()?.forecast ?? null))
    if (answers.length > 0) waiting = [...waiting, ...answers].sort(inTime)
  }
  return play.over()
}

class Play {
  readonly #input: DayToPlay
  #session: Session
  #lines: Line[] = []
  #effects: Effect[] = []
  #told: TimedForecast[] = []
  #answers = 0

  constructor(input: DayToPlay) {
    this.#input = input
    this.#session = openSession(input.day)
  }
  step(now: Instant, lines: readonly Line[]): Line[] {
    this.#lines.push(...lines)
    const id = `played/${now}`
    return lines.length > 0
      ? this.#reduce({ id, at: now, kind: 'lines', lines })
      : this.#reduce({ id, at: now, kind: 'tick' })
  }
  forecast(now: Instant, told: LiveForecast | null): Line[] {
    const { forecasts } = this.#input
    const made = told ?? ('make' in forecasts ? forecasts.make(this.#session.told, now, this.#session.forecast) : null)
    if (!made) return []
    this.#told.push({ at: now, forecast: made })
    return this.#reduce({ id: `forecast/${now}/${this.#told.length}`, at: now, kind: 'forecast', forecast: made })
  }
  over(): PlayedOut {
    return {
      session: this.#session,
      lines: this.#lines,
      forecasts: this.#told,
      effects: this.#effects,
    }
  }

  #reduce(event: Parameters<typeof reduce>[1]): Line[] {
    const [session, effects] = reduce(this.#session, event)
    this.#session = session
    this.#effects.push(...effects)
    const { crewSeed } = this.#input
    if (crewSeed === null) return []
    const said = effects.flatMap((effect) => crewAnswers(effect, session.now, crewSeed, null))
    return said.map(({ at, person, call, answer }) =>
      this.#lineOf(at, crewSeed, { by: { device: 'made-up', person }, kind: 'call-answer', call, answer }),
    )
  }
  #lineOf(at: Instant, seed: number, rest: EntryDocument): Line {
    const chance = chanceOf(seed, this.#answers++, STREAM)
    const random = Uint8Array.from({ length: RANDOM_BYTES }, () => Math.floor(256 * chance.uniform()))
    return lineOf({ id: entryId(at, random), at: whenText(at), ...rest })
  }
}

/** As if it had come in when it happened. */
export function lineOf(document: EntryDocument): Line {
  const read = readEntry(document)
  if (!read.ok) throw new Error(`An invented entry does not read: ${read.problems[0]?.sentence}`)
  return { entry: read.value, document, receipt: { received: read.value.at, sent: read.value.at } }
}

/** When a day that is invented is forecast: so often while something cooks, and soon after each mark. */
export function forecastTimes(lines: readonly Line[], everyMin: number): readonly Instant[] {
  const marks = lines.flatMap(({ entry }) => (entry.kind === 'mark' ? [entry.at] : []))
  const [first, last] = [Math.min(...marks), Math.max(...marks)]
  const times = new Set(marks)
  for (let at = first; at < last; at += everyMin * 60_000) times.add(instant(at))
  return [...times].filter(Number.isFinite).sort((a, b) => a - b)
}
