import { formatClock } from '@/lib/plan/clock'
import type { LastRePlan } from '@/lib/session/announced-layout'
import { rePlanned } from '../../words/shared'

/** That the day shown is no longer the morning's. */
export function RePlanned({ last, zone }: { last: LastRePlan | null; zone: string }) {
  if (!last) return null
  const moved = last.moved === 0 ? '' : `: ${last.moved === 1 ? '1 call' : `${last.moved} calls`} moved`
  return (
    <p className="says my-4">
      <b>
        {rePlanned} <span className="time">{formatClock(last.at, zone)}</span>
        {moved}.
      </b>{' '}
      {last.what}.
    </p>
  )
}
