import type { Metadata } from 'next'
import Link from 'next/link'
import { allShoots, maybeElsewhere, notHere, nothingHere, product } from './words/faults'

export const metadata: Metadata = { title: nothingHere }

export default function NotFoundPage() {
  return (
    <main id="main" className="page">
      <header className="head">
        <Link href="/" className="name">
          {product}
        </Link>
      </header>
      <h1>{notHere}</h1>
      <p className="lead mt-4">{maybeElsewhere}</p>
      <Link className="btn main mt-4" href="/">
        {allShoots}
      </Link>
    </main>
  )
}
