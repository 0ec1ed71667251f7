import type { Metadata } from 'next'
import { loadSet } from '../../../../set/load-set'
import { LiveContinuity } from '../../../../set/photos/continuity'
import { ShootHead } from '../../../../ui/shoot-head'
import { factsOf } from '../../../../workbench'
import { NoLayout } from '../../no-layout'
import '../../../../set/set.css'

export const metadata: Metadata = { title: 'Continuity' }
export const dynamic = 'force-dynamic'

/** Before this shot: how did it look? */
export default async function ContinuityPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const set = await loadSet(shootId)
  const { open, units } = set
  return (
    <main id="main" className="page">
      <ShootHead
        id={shootId}
        title={open.shoot.title}
        facts={factsOf(open.shoot, units)}
        page="set"
        canUndo={open.canUndo}
        units={units}
      />
      {set.ok ? (
        <LiveContinuity shootId={shootId} opening={set.opening} facts={set.facts} units={units} />
      ) : (
        <NoLayout problems={set.problems} />
      )}
    </main>
  )
}
