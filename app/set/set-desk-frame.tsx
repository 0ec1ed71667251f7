import { NoLayout } from '../shoots/[shootId]/no-layout'
import { ShootHead } from '../ui/shoot-head'
import { loadSet } from './load-set'
import { type FrameProps, liveOf } from './set-frame'

/**
 * A page of the set for a laptop, under the head that every page of a shoot has. Its own file: what that head weighs is
 * not for the phones.
 */
export async function SetDesk({ shootId, children }: FrameProps) {
  const set = await loadSet(shootId)
  return (
    <main id="main" className="page">
      <ShootHead open={set.open} units={set.units} page="set" />
      {set.ok ? children(liveOf(shootId, set), set) : <NoLayout problems={set.problems} />}
    </main>
  )
}
