import type { Metadata } from 'next'
import { comeIn, needsScripts } from '../words/door'
import { name } from '../words/start'
import { JoinByCode } from './join-by-code'

export const metadata: Metadata = { title: comeIn }
export const dynamic = 'force-dynamic'

/** What a crew link opens. The code stands after the "#", so that it is never sent with an address or written to a log. */
export default function JoinPage() {
  return (
    <main id="main" className="page">
      <header className="head">
        <span className="name">{name}</span>
      </header>
      <JoinByCode />
      <noscript>
        <p className="lead">{needsScripts}</p>
      </noscript>
    </main>
  )
}
