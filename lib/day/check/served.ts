import type { Shoot } from '../../plan/shoot'
import { instant } from '../../units'
import type { DayForecast } from '../day-forecast'
import { lightBands } from '../sun'
import { LIMITS } from './limits'

type Band = { readonly start: number; readonly end: number }

/**
 * A roast whose day asks for a chance is not cut before its light or hour, if `max` of its rest and hold lets it lie:
 * the checker's own reading of that rule. `atMs` gives a clock time's instant.
 */
export function servedForecast<F extends DayForecast>(
  shoot: Shoot,
  forecast: F,
  meatOnMs: number,
  atMs: (clock: string) => number,
): F {
  const slices = forecast.moments['first-slice']
  if (!asksForChance(shoot) || !slices || Number.isNaN(meatOnMs)) return forecast
  const bands = wantedBands(shoot, atMs)
  const moved = slices.map((s, m) => {
    const ready = meatOnMs + s * 1000
    const latest = ready + lieMs(forecast, m)
    const reached = bands.filter((b) => b.end >= ready && b.start <= latest).map((b) => Math.max(b.start, ready))
    return reached.length === 0 ? s : (Math.min(...reached) - meatOnMs) / 1000
  })
  return Object.create(forecast, { moments: { value: { ...forecast.moments, 'first-slice': moved } } }) as F
}
export const asksForChance = ({ day }: Shoot): boolean => day?.slice?.chance !== undefined

/** Share of members sliced as the day wishes. */
export function sharePleased(
  shoot: Shoot,
  served: DayForecast,
  meatOnMs: number,
  atMs: (clock: string) => number,
): number {
  const bands = wantedBands(shoot, atMs)
  const slices = served.moments['first-slice'] ?? new Float64Array(0)
  const pleased = slices.filter((s) => {
    const at = meatOnMs + s * 1000
    return bands.some((b) => at >= b.start - 1 && at <= b.end + 1)
  })
  return pleased.length / Math.max(1, slices.length)
}

const DAY_MS = 86_400_000
function wantedBands(shoot: Shoot, atMs: (clock: string) => number): readonly Band[] {
  const slice = shoot.day?.slice
  if (!slice) return []
  if ('at' in slice) return [{ start: atMs(slice.at) - LIMITS.sliceMs, end: atMs(slice.at) + LIMITS.sliceMs }]
  const from = atMs(shoot.day?.call ?? '00:00')
  return lightBands(shoot.place, instant(from - DAY_MS), instant(from + 2 * DAY_MS)).filter(
    (b) => b.light === slice.in && b.end > from && b.start < from + DAY_MS,
  )
}

/** How long one member's roast may lie beyond what its plan asks, ms. */
function lieMs({ cook, moments }: DayForecast, m: number): number {
  const heats = cook.stages.map((s) => s.do === 'roast' || s.do === 'sear')
  const lying = cook.stages.filter((s, i) => i > heats.lastIndexOf(true) && (s.do === 'rest' || s.do === 'hold'))
  const [one] = lying
  if (lying.length === 1 && one && one.do !== 'preheat' && one.max !== undefined && !('after' in one.until)) {
    const lain = (moments['first-slice']?.[m] ?? 0) - (moments['off-heat']?.[m] ?? 0)
    return Number.isFinite(lain) ? Math.max(0, one.max - lain) * 1000 : 0
  }
  let sum = 0
  for (const stage of lying)
    if (stage.do !== 'preheat' && stage.max !== undefined && 'after' in stage.until)
      sum += Math.max(0, stage.max - stage.until.after) * 1000
  return sum
}
