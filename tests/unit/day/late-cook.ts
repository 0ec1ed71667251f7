import { gapPct } from '../../../lib/cli/committed-days'
import type { DayForecast } from '../../../lib/day/day-forecast'
import { layOutDay } from '../../../lib/day/lay-out'
import type { Layout } from '../../../lib/day/layout'
import { searchRest } from '../../../lib/day/re-plan'
import { fromIso } from '../../../lib/plan/clock'
import type { Shoot } from '../../../lib/plan/shoot'
import { type Instant, instant } from '../../../lib/units'

/** A forecast as of `nowS` after meat-on: what has likely happened has its time, and all else comes so much later. */
export function comesLater(forecast: DayForecast, nowS: number, laterS: number): DayForecast {
  const passed = Math.max(0, nowS)
  const moments = Object.fromEntries(
    Object.entries(forecast.moments).map(([id, samples]) => {
      const likely = Float64Array.from(samples).sort()[(samples.length - 1) >> 1] as number
      return [id, likely <= passed ? samples.map(() => likely) : samples.map((t) => Math.max(t, passed) + laterS)]
    }),
  )
  const { startS, stepS, count, probeC } = forecast.trace
  const wait = Math.round(laterS / stepS)
  const stands = Math.max(0, Math.round((passed - startS) / stepS))
  // The probe stands still at what it reads now, then goes on as it would have.
  const delayed = probeC.map((_, k) => {
    const [row, i] = [Math.floor(k / count) * count, k % count]
    return probeC[row + (i <= stands ? i : Math.max(stands, i - wait))] as number
  })
  return { ...forecast, moments, trace: { ...forecast.trace, probeC: delayed, coreC: delayed } }
}

export interface LateDay {
  readonly shoot: Shoot
  readonly previous: Layout
  readonly now: Instant
  readonly later: ReadonlyMap<string, DayForecast>
}
/** Half time of a laid-out day, at which its cooks turn out to be late. */
export function lateAtHalfTime(
  shoot: Shoot,
  forecasts: ReadonlyMap<string, DayForecast>,
  laterMin: number,
  sweeps?: number,
): LateDay {
  const previous = layOutDay(shoot, forecasts, { seed: 1, ...(sweeps !== undefined && { sweeps }) })
  const now = instant(Math.round((fromIso(previous.crewCall) + fromIso(previous.wrap)) / 2))
  const later = new Map(
    [...forecasts].map(([id, f]) => {
      const meatOn = fromIso(previous.meatOn[id] as string)
      return [id, comesLater(f, (now - meatOn) / 1000, laterMin * 60)] as const
    }),
  )
  return { shoot, previous, now, later }
}

/** Of what was announced and is still to come: how many there are, how many move by more than 5 min or fall out. */
export function callsMoved({ shoot, previous, now }: LateDay, next: Layout) {
  const ahead = previous.shots.filter((s) => fromIso(s.setupStart) > now + 10 * 60_000)
  const moved = (ids: readonly string[]) =>
    ids.filter((id) => {
      const [was, is] = [previous, next].map((l) => l.shots.find((s) => s.id === id)?.setupStart)
      return !is || Math.abs(fromIso(is) - fromIso(was as string)) > 5 * 60_000
    }).length
  const ids = ahead.map((s) => s.id)
  // The fire is lit and the meat goes on by the plan; all that comes of the cook from then on hangs on it.
  const hangsOnCook = (id: string): boolean => {
    const shot = shoot.shots?.find((s) => s.id === id)
    if (shot?.at) return shot.at.moment !== 'fire-lit' && shot.at.moment !== 'meat-on'
    return ['hot', 'rested', 'sliced'].includes(shot?.state ?? '') || (shot?.after ?? []).some(hangsOnCook)
  }
  const byClock = ids.filter((id) => !hangsOnCook(id))
  return {
    whole: previous.shots.length,
    ahead: ids.length,
    aheadMoved: moved(ids),
    byClock: byClock.length,
    byClockMoved: moved(byClock),
  }
}

/**
 * What the re-plan costs over the rest of the day as it would be laid out had nothing been announced: a share of the
 * weight that may be dropped, and of that cost; per cent.
 */
export function overFreePct({ shoot, previous, now, later }: LateDay, seed: number, freeSweeps: number) {
  const kept = searchRest(shoot, later, { previous, now, seed })
  const free = searchRest(shoot, later, { previous, now, seed, stable: false, sweeps: freeSweeps })
  const cost = kept.draft.cost - kept.draft.moved
  return {
    ofWeight: gapPct(kept.problem, cost, free.draft.cost),
    ofCost: (100 * (cost - free.draft.cost)) / free.draft.cost,
  }
}
