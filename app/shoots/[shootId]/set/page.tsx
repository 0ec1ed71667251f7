import type { Metadata, Viewport } from 'next'
import { tlsPort } from '@/lib/data/env'
import { LiveBoard } from '../../../set/live-board'
import { loadSet } from '../../../set/load-set'
import { NoLayout } from '../no-layout'
import '../../../set/set.css'

export const metadata: Metadata = { title: 'Set' }
export const viewport: Viewport = { viewportFit: 'cover' }
export const dynamic = 'force-dynamic'

/** The board in everybody's pocket: what is next, when, what must I do. */
export default async function SetPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const set = await loadSet(shootId)
  if (!set.ok)
    return (
      <main id="main" className="page">
        <h1>{set.open.shoot.title}</h1>
        <NoLayout problems={set.problems} />
      </main>
    )
  return (
    <LiveBoard
      shootId={shootId}
      opening={set.opening}
      facts={set.facts}
      units={set.units}
      canTrust={tlsPort() !== null}
    />
  )
}
