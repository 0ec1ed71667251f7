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
