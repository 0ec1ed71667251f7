import type { PlannedMove } from '@/lib/session/compare-plans'
import { formatDuration, type Instant, seconds } from '@/lib/units'

const LONGEST = 600
/** What a sent re-plan did, as the log says it. */
export function movesInWords(moves: readonly PlannedMove[]): string {
  const words = moves.map(({ title, from, to }) => {
    if (to === null) return `${title} dropped`
    return from === null ? `${title} is new` : `${title} ${shiftWords(from, to)}`
  })
  const all = words.join('; ')
  return all.length <= LONGEST ? all : `${moves.length} moves: ${all.slice(0, LONGEST - 20)} …`
}
export function shiftWords(from: Instant, to: Instant): string {
  const by = (to - from) / 1000
  if (Math.abs(by) < 30) return 'with other people'
  return `${formatDuration(seconds(Math.abs(by)))} ${by > 0 ? 'later' : 'sooner'}`
}
