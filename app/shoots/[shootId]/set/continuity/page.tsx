import type { Metadata } from 'next'
import { LiveContinuity } from '../../../../set/photos/continuity'
import { SetDesk } from '../../../../set/set-desk-frame'
import '../../../../set/set.css'
import { continuity } from '../../../../words/set'

export const metadata: Metadata = { title: continuity }
export const dynamic = 'force-dynamic'

/** Before this shot: how did it look? */
export default async function ContinuityPage({ params }: { params: Promise<{ shootId: string }> }) {
  return <SetDesk shootId={(await params).shootId}>{(live) => <LiveContinuity {...live} />}</SetDesk>
}
