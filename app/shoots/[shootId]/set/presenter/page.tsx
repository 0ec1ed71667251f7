import type { Metadata, Viewport } from 'next'
import { LivePresenter } from '../../../../set/live-presenter'
import { loadSet } from '../../../../set/load-set'
import { NoLayout } from '../../no-layout'
import '../../../../set/set.css'

export const metadata: Metadata = { title: 'Presenter’s line' }
export const viewport: Viewport = { viewportFit: 'cover' }
export const dynamic = 'force-dynamic'

/** One line on a stand beside the camera, readable at three metres. */
export default async function PresenterPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const set = await loadSet(shootId)
  if (!set.ok)
    return (
      <main id="main" className="page">
        <h1>{set.open.shoot.title}</h1>
        <NoLayout problems={set.problems} />
      </main>
    )
  return <LivePresenter shootId={shootId} opening={set.opening} facts={set.facts} units={set.units} />
}
