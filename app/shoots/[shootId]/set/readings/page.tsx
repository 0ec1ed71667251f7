import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { isSecure } from '@/lib/data/visitor'
import { loadSet } from '../../../../set/load-set'
import { ReadingsDesk } from '../../../../set/readings/readings-desk'
import { ShootHead } from '../../../../ui/shoot-head'
import { factsOf } from '../../../../workbench'
import { NoLayout } from '../../no-layout'
import '../../../../set/set.css'
import '../../../../set/readings/readings.css'

export const metadata: Metadata = { title: 'Readings' }
export const dynamic = 'force-dynamic'

/** Where readings come in that nobody types. */
export default async function ReadingsPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const set = await loadSet(shootId)
  const { open, units } = set
  const asked = await headers()
  const origin = `${isSecure(asked) ? 'https' : 'http'}://${asked.get('host') ?? ''}`
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
        <ReadingsDesk
          shootId={shootId}
          opening={set.opening}
          facts={set.facts}
          units={units}
          date={open.shoot.date}
          origin={origin}
        />
      ) : (
        <NoLayout problems={set.problems} />
      )}
    </main>
  )
}
