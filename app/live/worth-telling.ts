import type { LiveForecast } from '@/lib/session/session'

/** Less than this changes nothing for anybody. */
const LEAST_MS = 10_000

/** Whether a forecast says anything that the one before did not: a quiet minute sends nothing to ten phones. */
export function differs(now: LiveForecast, before: LiveForecast | null): boolean {
  if (!before?.lines) return true
  if (now.expected.length !== before.expected.length || wordsOf(now) !== wordsOf(before)) return true
  return now.expected.some(({ likely, sd }, i) => {
    const last = before.expected[i]
    return !last || Math.abs(likely - last.likely) >= LEAST_MS || Math.abs(sd - last.sd) * 1000 >= LEAST_MS
  })
}
const wordsOf = ({ reason, reasons, troubles, fuelOut }: LiveForecast) =>
  JSON.stringify([reason, reasons, troubles?.map(({ id }) => id), fuelOut])
