import type { Metadata } from 'next'
import { LiveDesk } from '../../../../set/live-desk'
import { loadSet } from '../../../../set/load-set'
import { ShootHead } from '../../../../ui/shoot-head'
import { factsOf } from '../../../../workbench'
import { NoLayout } from '../../no-layout'
import '../../../../set/set.css'
import '../../../../set/desk.css'

export const metadata: Metadata = { title: 'Set, on the laptop' }
export const dynamic = 'force-dynamic'

/** Everything about the running day on one wide page. */
export default async function DeskPage({ params }: { params: Promise<{ shootId: string }> }) {
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
      <h1 className="sr-only">The set: {open.shoot.title}</h1>
      {set.ok ? (
        <LiveDesk
          shootId={shootId}
          opening={set.opening}
          facts={set.facts}
          units={units}
          day={{ version: open.version, document: open.document, layout: set.layout }}
        />
      ) : (
        <NoLayout problems={set.problems} />
      )}
    </main>
  )
}
