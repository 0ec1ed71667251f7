import { daysAgo, inDays, today, tomorrow, yesterday } from '../words/start'

interface Dated {
  readonly id: string
  readonly title: string
  /** "2027-05-15". */
  readonly date: string
}
/** A list by the shoot's own day: what is next first, then what was last; whatever is farther off is folded. */
export interface ByDay<T> {
  readonly near: readonly T[]
  readonly ahead: readonly T[]
  readonly behind: readonly T[]
}

/** So many rows are read at a glance. */
const NEAR = 8
const DAY_MS = 86_400_000
const daysUntil = (date: string, now: string) => Math.round((Date.parse(date) - Date.parse(now)) / DAY_MS)

export function byDay<T extends Dated>(shoots: readonly T[], now: string): ByDay<T> {
  const inOrder = [...shoots].sort((a, b) => rank(a, now) - rank(b, now) || order(a, b))
  const near = new Set([...inOrder].sort((a, b) => far(a, now) - far(b, now)).slice(0, NEAR))
  const rest = inOrder.filter((one) => !near.has(one))
  return {
    near: inOrder.filter((one) => near.has(one)),
    ahead: rest.filter(({ date }) => date >= now),
    behind: rest.filter(({ date }) => date < now),
  }
}
/** Days ahead go up, then days that were go back; the number of an unreadable day is none. */
const rank = ({ date }: Dated, now: string) => {
  const days = daysUntil(date, now)
  return Number.isNaN(days) ? Number.MAX_SAFE_INTEGER : days >= 0 ? days : 1e6 - days
}
const far = ({ date }: Dated, now: string) => Math.abs(daysUntil(date, now)) || 0
const order = (a: Dated, b: Dated) => a.title.localeCompare(b.title, 'en') || (a.id < b.id ? -1 : 1)

/** "in 3 days", while it is near enough to matter. */
export function fromToday(date: string, now: string): string {
  const days = daysUntil(date, now)
  if (days === 0) return today
  if (Math.abs(days) === 1) return days > 0 ? tomorrow : yesterday
  if (!(Math.abs(days) <= 30)) return ''
  return days > 0 ? inDays(days) : daysAgo(-days)
}
