import type { Metadata } from 'next'
import { cookSet } from '@/lib/session/adopted'
import { LiveDesk } from '../../../../set/live-desk'
import { SetDesk } from '../../../../set/set-desk-frame'
import '../../../../set/set.css'
import '../../../../set/desk.css'
import { setOnLaptop, theSet } from '../../../../words/set'

export const metadata: Metadata = { title: setOnLaptop }
export const dynamic = 'force-dynamic'

/** Everything about the running day on one wide page. */
export default async function DeskPage({ params }: { params: Promise<{ shootId: string }> }) {
  return (
    <SetDesk shootId={(await params).shootId}>
      {(live, { open: { version, document, shoot }, layout }) => (
        <>
          <h1 className="sr-only">{theSet(shoot.title)}</h1>
          <LiveDesk {...live} day={{ version, document, layout, sets: shoot.cooks.map(cookSet) }} />
        </>
      )}
    </SetDesk>
  )
}
