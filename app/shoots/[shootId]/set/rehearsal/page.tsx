import type { Metadata, Viewport } from 'next'
import { loadRehearsal } from '../../../../set/rehearsal/load-rehearsal'
import { RehearsalScreen } from '../../../../set/rehearsal/rehearsal-screen'
import { NoLayout } from '../../no-layout'
import '../../../../set/set.css'
import '../../../../set/desk.css'
import '../../../../set/rehearsal/rehearsal.css'

export const metadata: Metadata = { title: 'Rehearsal' }
export const viewport: Viewport = { viewportFit: 'cover' }
export const dynamic = 'force-dynamic'

interface Asked {
  readonly params: Promise<{ shootId: string }>
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>
}

/** A day played through the screens of the set: an invented one, or the one that was logged. */
export default async function RehearsalPage({ params, searchParams }: Asked) {
  const { shootId } = await params
  const { of, view } = await searchParams
  const loaded = await loadRehearsal(shootId, of === 'logged' ? 'logged' : 'made-up')
  if (!loaded.ok)
    return (
      <main id="main" className="page">
        <h1>{loaded.open.shoot.title}</h1>
        <NoLayout problems={loaded.problems} />
      </main>
    )
  const { opening, facts, units, timeline, played, hasLog, crewSeed, person } = loaded
  const day = { opening, facts, units, timeline, played, hasLog, crewSeed, person }
  // Another day or another view begins anew.
  return (
    <RehearsalScreen key={`${played}/${view}`} shootId={shootId} {...day} view={view === 'desk' ? 'desk' : 'board'} />
  )
}
