import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { isSecure } from '@/lib/data/door/visitor'
import { ReadingsDesk } from '../../../../set/readings/readings-desk'
import { SetDesk } from '../../../../set/set-desk-frame'
import '../../../../set/set.css'
import '../../../../set/readings/readings.css'
import { readings } from '../../../../words/set'

export const metadata: Metadata = { title: readings }
export const dynamic = 'force-dynamic'

/** Where readings come in that nobody types. */
export default async function ReadingsPage({ params }: { params: Promise<{ shootId: string }> }) {
  const asked = await headers()
  const origin = `${isSecure(asked) ? 'https' : 'http'}://${asked.get('host') ?? ''}`
  return (
    <SetDesk shootId={(await params).shootId} help="readings">
      {(live, { open }) => <ReadingsDesk {...live} date={open.shoot.date} origin={origin} />}
    </SetDesk>
  )
}
