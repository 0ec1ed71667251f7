import type { Metadata } from 'next'
import { JoinByCode } from './join-by-code'

export const metadata: Metadata = { title: 'Come in' }
export const dynamic = 'force-dynamic'

/** What a crew link opens. The code stands after the "#", so that it is never sent with an address or written to a log. */
export default function JoinPage() {
  return (
    <main id="main" className="page">
      <JoinByCode />
      <noscript>
        <p className="lead">This page needs scripts. Switch them on in the browser, then open your link again.</p>
      </noscript>
    </main>
  )
}
