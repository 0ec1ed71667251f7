'use client'
import type { Span95 } from '@/lib/session/board-facts'
import type { Instant } from '@/lib/units'
import { fromNow, nowInLine } from '../words/set'

const [WIDTH, LINE_Y, LEAST_GAP] = [354, 20, 8]
/** Rough widths of the lettering, px. */
const LETTER_PX = 8.4

interface WaitLineProps {
  readonly now: Instant
  readonly standby: Instant | null
  readonly window: Span95
  readonly clock: (at: Instant) => string
}

/** From now to the late end on one line: stand by, and the window of the moment. */
export function WaitLine({ now, standby, window: { early, likely, late }, clock }: WaitLineProps) {
  if (likely === null || early === null || late === null || late <= now) return null
  const end = late + (late - now) * 0.1
  const x = (at: Instant) => Math.max(1.5, ((at - now) / (end - now)) * WIDTH)
  const standbyX = standby !== null && standby > now ? x(standby) : null
  const likelyText = clock(likely)
  const standbyText = standby === null ? '' : `stand by ${clock(standby)}`
  const likelyX = Math.min(WIDTH - (likelyText.length * LETTER_PX) / 2, x(likely))
  const roomBefore = likelyX - (likelyText.length * LETTER_PX) / 2 - LEAST_GAP
  const standbyEnd = standbyX === null ? 0 : Math.min(standbyX, roomBefore)
  const standbyFits = standbyX !== null && standbyEnd - standbyText.length * LETTER_PX > 40
  return (
    <svg className="wait" viewBox={`0 0 ${WIDTH} 54`} role="img" aria-label={fromNow(clock(late))}>
      <line x1="0" x2={WIDTH} y1={LINE_Y} y2={LINE_Y} stroke="var(--edge)" strokeWidth="1.25" />
      <line x1="1.5" x2="1.5" y1="6" y2="34" stroke="var(--ember)" strokeWidth="3" />
      <text x="0" y="50">
        {nowInLine}
      </text>
      {standbyX !== null && <path d={`M${standbyX} 6V34`} stroke="var(--cool)" strokeWidth="3" />}
      {standbyFits && (
        <text x={standbyEnd} y="50" textAnchor="end">
          {standbyText}
        </text>
      )}
      <rect x={x(early)} y="16" width={Math.max(4, x(late) - x(early))} height="8" fill="var(--ember)" />
      <rect x={x(likely) - 2} y="8" width="4" height="24" fill="var(--ember)" />
      <text x={likelyX} y="50" textAnchor="middle">
        {likelyText}
      </text>
    </svg>
  )
}
