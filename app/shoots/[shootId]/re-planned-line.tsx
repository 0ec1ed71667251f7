import { asRead } from '@/lib/plan/as-read'
import { formatClock } from '@/lib/plan/clock'
import type { LastRePlan } from '@/lib/session/announced-layout'
import { readersWay } from '../../locale'
import { rePlanned } from '../../words/shared'

/** That the day shown is no longer the morning's. */
export async function RePlanned({ last, zone }: { last: LastRePlan | null; zone: string }) {
  if (!last) return null
  const way = await readersWay()
  const moved = last.moved === 0 ? '' : `: ${last.moved === 1 ? '1 call' : `${last.moved} calls`} moved`
  return (
    <p className="says my-4">
      <b>
        {rePlanned} <span className="time">{asRead(formatClock(last.at, zone), way)}</span>
        {moved}.
      </b>{' '}
      {asRead(last.what, way)}.
    </p>
  )
}
