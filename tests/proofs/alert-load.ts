import { playDay } from '../unit/session/play-day'

const DAYS = 200

/** The live rule book over simulated days: how often each person is alerted, and what was missed, late or loud. */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const days = Array.from({ length: DAYS }, (_, i) => playDay(seed * DAYS + i))
  const loads = days.flatMap((day) => day.perTenMin)
  const figures = {
    days: DAYS,
    alerts_per_person_10min_mean: Math.round(1000 * (loads.reduce((a, b) => a + b, 0) / loads.length)) / 1000,
    alerts_per_person_10min_worst_day: Math.round(1000 * Math.max(...loads)) / 1000,
    alerts_in_any_10min_worst: Math.max(...days.map((day) => day.worstTenMin)),
    moments_missed: days.flatMap((day) => day.missed).length,
    actions_told_late: days.flatMap((day) => day.late).length,
    sounds_in_a_take: days.flatMap((day) => day.loudInTake).length,
  }
  const fell = figures.moments_missed + figures.actions_told_late + figures.sounds_in_a_take
  if (fell > 0 || figures.alerts_per_person_10min_worst_day > 1)
    throw new Error(`${JSON.stringify(figures, null, 2)}\n${days.flatMap((day) => [...day.missed, ...day.late, ...day.loudInTake]).join('\n')}`)
  return figures
}
