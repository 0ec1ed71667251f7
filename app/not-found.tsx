import Link from 'next/link'
import { allShoots, maybeElsewhere, notHere } from './words/faults'

export default function NotFoundPage() {
  return (
    <main id="main" className="page">
      <h1>{notHere}</h1>
      <p className="lead mt-4">{maybeElsewhere}</p>
      <Link className="btn main mt-4" href="/">
        {allShoots}
      </Link>
    </main>
  )
}
