'use client'
const BROKEN = 'What was saved is safe. Try once more; if it stays so, the server’s window says why.'
const AWAY = 'The database does not answer at present. What was saved is safe; try again in a moment.'

export default function ErrorPage({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <main id="main" className="page">
      <h1>This page did not come together.</h1>
      <p className="lead mt-4">{error.digest === 'database-away' ? AWAY : BROKEN}</p>
      <button type="button" className="btn main mt-4" onClick={reset}>
        Try again
      </button>
    </main>
  )
}
