import type { Metadata, Viewport } from 'next'
import { tlsPort } from '@/lib/data/env'
import { LiveBoard } from '../../../set/live-board'
import { SetScreen } from '../../../set/set-frame'
import '../../../set/set.css'
import { set } from '../../../words/set'

export const metadata: Metadata = { title: set }
export const viewport: Viewport = { viewportFit: 'cover' }
export const dynamic = 'force-dynamic'

/** The board in everybody's pocket: what is next, when, what must I do. */
export default async function SetPage({ params }: { params: Promise<{ shootId: string }> }) {
  return (
    <SetScreen shootId={(await params).shootId}>
      {(live) => <LiveBoard {...live} canTrust={tlsPort() !== null} />}
    </SetScreen>
  )
}
