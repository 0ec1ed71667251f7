import type { Metadata, Viewport } from 'next'
import { LivePresenter } from '../../../../set/live-presenter'
import { SetScreen } from '../../../../set/set-frame'
import '../../../../set/set.css'
import { presentersLine } from '../../../../words/set'

export const metadata: Metadata = { title: presentersLine }
export const viewport: Viewport = { viewportFit: 'cover' }
export const dynamic = 'force-dynamic'

/** One line on a stand beside the camera, readable at three metres. */
export default async function PresenterPage({ params }: { params: Promise<{ shootId: string }> }) {
  return <SetScreen shootId={(await params).shootId}>{(live) => <LivePresenter {...live} />}</SetScreen>
}
