'use client'
export default function ErrorPage({ reset }: { error: Error; reset: () => void }) {
  return (
    <main id="main" className="page">
      <h1>This page did not come together.</h1>
      <p className="lead mt-4">What was saved is safe. Try once more; if it stays so, the server’s window says why.</p>
      <button type="button" className="btn main mt-4" onClick={reset}>
        Try again
      </button>
    </main>
  )
}
