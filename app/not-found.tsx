import Link from 'next/link'

export default function NotFoundPage() {
  return (
    <main id="main" className="page">
      <h1>There is no such shoot or page here.</h1>
      <p className="lead mt-4">
        It may have been opened on another machine. <Link href="/">See the shoots that are here.</Link>
      </p>
    </main>
  )
}
