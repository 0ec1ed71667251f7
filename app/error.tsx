'use client'
import Link from 'next/link'
import { type ReactNode, useEffect } from 'react'
import * as words from './words/faults'

/** A saved shoot that does not read here; `app/workbench.ts` names it in the fault's digest. */
const UNREADABLE = 'shoot-unreadable/'
const AGAIN_MS = 5000

interface Fault {
  readonly error: Error & { digest?: string }
  /** Asks the server anew. */
  readonly retry: () => void
}
export default function ErrorPage({ error, retry }: Fault) {
  const { digest = '' } = error
  if (digest.startsWith(UNREADABLE)) return <Unreadable id={digest.slice(UNREADABLE.length)} />
  if (digest === 'database-away') return <Away retry={retry} />
  return (
    <Standing title={words.notTogether} says={words.broken}>
      {digest && <p className="mt-4">{words.numbered(digest)}</p>}
      <TryAgain retry={retry} />
    </Standing>
  )
}

function Away({ retry }: Pick<Fault, 'retry'>) {
  useEffect(() => {
    const timer = setInterval(retry, AGAIN_MS)
    return () => clearInterval(timer)
  }, [retry])
  return (
    <Standing title={words.notTogether} says={words.away}>
      <TryAgain retry={retry} />
    </Standing>
  )
}

const TryAgain = ({ retry }: Pick<Fault, 'retry'>) => (
  <button type="button" className="btn main mt-4" onClick={retry}>
    {words.tryAgain}
  </button>
)

const Unreadable = ({ id }: { id: string }) => (
  <Standing title={words.otherVersion} says={words.notKnownHere}>
    <a className="btn main mt-4" href={`/api/shoots/${id}/export`} download>
      {words.takeItsFile}
    </a>
  </Standing>
)

function Standing({ title, says, children }: { title: string; says: string; children: ReactNode }) {
  return (
    <main id="main" className="page">
      <header className="head">
        <Link href="/" className="name">
          {words.product}
        </Link>
      </header>
      <h1>{title}</h1>
      <p className="lead mt-4">{says}</p>
      {children}
      <p className="mt-4">
        <Link className="textlink" href="/">
          {words.allShoots}
        </Link>
      </p>
    </main>
  )
}
