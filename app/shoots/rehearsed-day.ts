import type { Layout } from '@/lib/day/layout'
import type { Line } from '@/lib/log/log'
import { fastestKernel } from '@/lib/model/kernels'
import type { Shoot } from '@/lib/plan/shoot'
import { type LiveKept, liveForecast } from '@/lib/session/live-forecast'
import { forecastTimes, lineOf, playedOut, type TimedForecast } from '@/lib/session/played-out'
import { madeUpDay } from '@/lib/session/rehearsal'
import type { Alert, CallNow } from '@/lib/session/session'
import { sessionDay } from '@/lib/session/session-day'
import { forecastsBehind, seedOf } from '../worked-out'

/** What a day that was played to its end leaves: its lines, what was forecast on the way, what became of calls and alerts. */
export interface DayPlayed {
  readonly lines: readonly Line[]
  /** Without their curves. */
  readonly forecasts: readonly TimedForecast[]
  readonly calls: Readonly<Record<string, CallNow>>
  readonly alerts: Readonly<Record<string, Alert>>
}

/** What became of the calls and alerts of a day that was logged, with the forecasts that were told on it. */
export function loggedDay({ shoot, layout, lines, forecasts }: LoggedDay): Pick<DayPlayed, 'calls' | 'alerts'> {
  const day = sessionDay(shoot, layout)
  const { session } = playedOut({ day, lines: thinned(lines), forecasts, crewSeed: null })
  return { calls: session.calls, alerts: session.alerts }
}
export interface LoggedDay {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly lines: readonly Line[]
  readonly forecasts: readonly TimedForecast[]
}

/** A logger writes every few seconds; whom a reading calls is known as well from one in two minutes. */
const READ_EACH_MS = 120_000
function thinned(lines: readonly Line[]): readonly Line[] {
  const last = new Map<string, number>()
  return [...lines]
    .sort((a, b) => a.entry.at - b.entry.at)
    .filter(({ entry }) => {
      if (entry.kind !== 'reading') return true
      const key = `${entry.cook}/${entry.sensor}`
      if (entry.at - (last.get(key) ?? Number.NEGATIVE_INFINITY) < READ_EACH_MS) return false
      last.set(key, entry.at)
      return true
    })
}

/** Sparser than on the set: each takes a good part of a second. [estimate] */
const EACH_MIN = 15

/** The day that the rehearsal invents for a plan, with the answers of its crew. The same plan gives the same day. */
export function rehearsedDay(shoot: Shoot, layout: Layout): DayPlayed {
  const kernel = fastestKernel()
  const seed = seedOf(shoot)
  const timeline = madeUpDay({ shoot, layout, forecasts: forecastsBehind(shoot, layout), seed, kernel })
  const lines = timeline.map(lineOf)
  let kept: LiveKept = {}
  const { session, ...played } = playedOut({
    day: sessionDay(shoot, layout),
    lines,
    forecasts: {
      at: forecastTimes(lines, EACH_MIN),
      make(told, now, before) {
        const made = liveForecast({ shoot, layout, told, now, before, kernel }, kept)
        kept = made.kept
        const { lines: _, ...forecast } = made.forecast
        return forecast
      },
    },
    crewSeed: seed,
  })
  return { lines: played.lines, forecasts: played.forecasts, calls: session.calls, alerts: session.alerts }
}
