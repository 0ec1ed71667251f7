import type { Metadata, Viewport } from 'next'
import { Suspense } from 'react'
import { Opening } from '../../../../set/opening'
import { loadRehearsal } from '../../../../set/rehearsal/load-rehearsal'
import { RehearsalScreen } from '../../../../set/rehearsal/rehearsal-screen'
import { NoDay } from '../../../../set/set-frame'
import '../../../../set/set.css'
import '../../../../set/desk.css'
import '../../../../set/rehearsal/rehearsal.css'
import { rehearsal } from '../../../../words/set'
import { inventingDay } from '../../../../words/working'
import { savedShoot } from '../../../../workbench'

export const metadata: Metadata = { title: rehearsal }
export const viewport: Viewport = { viewportFit: 'cover' }
export const dynamic = 'force-dynamic'

interface Asked {
  readonly params: Promise<{ shootId: string }>
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>
}

/** A day played through the screens of the set: an invented one, or the one that was logged. */
export default async function RehearsalPage(asked: Asked) {
  const { shoot } = await savedShoot((await asked.params).shootId)
  return (
    <Suspense fallback={<Opening title={shoot.title} what={inventingDay} />}>
      <Rehearsed {...asked} />
    </Suspense>
  )
}

async function Rehearsed({ params, searchParams }: Asked) {
  const { shootId } = await params
  const { of, view } = await searchParams
  const loaded = await loadRehearsal(shootId, of === 'logged' ? 'logged' : 'made-up')
  if (!loaded.ok) return <NoDay id={shootId} title={loaded.open.shoot.title} problems={loaded.problems} />
  const { opening, facts, units, timeline, played, hasLog, crewSeed, person } = loaded
  const day = { opening, facts, units, timeline, played, hasLog, crewSeed, person }
  // Another day or another view begins anew.
  return (
    <RehearsalScreen key={`${played}/${view}`} shootId={shootId} {...day} view={view === 'desk' ? 'desk' : 'board'} />
  )
}
