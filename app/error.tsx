'use client'
const BROKEN = 'What was saved is safe. Try once more; if it stays so, the server’s window says why.'
const AWAY = 'The database does not answer at present. What was saved is safe; try again in a moment.'

/** A saved shoot that does not read here; `app/workbench.ts` names it in the fault's digest. */
const UNREADABLE = 'shoot-unreadable/'

export default function ErrorPage({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  const away = error.digest === 'database-away'
  if (error.digest?.startsWith(UNREADABLE)) return <Unreadable id={error.digest.slice(UNREADABLE.length)} />
  return (
    <main id="main" className="page">
      <h1>This page did not come together.</h1>
      <p className="lead mt-4">{away ? AWAY : BROKEN}</p>
      {error.digest && !away && <p className="mt-4">There it has the number {error.digest}.</p>}
      <button type="button" className="btn main mt-4" onClick={reset}>
        Try again
      </button>
    </main>
  )
}

function Unreadable({ id }: { id: string }) {
  return (
    <main id="main" className="page">
      <h1>This shoot was saved by another version of Emberslate.</h1>
      <p className="lead mt-4">
        It has something that this version does not know, and so cannot be shown here. Nothing of it is lost: start the
        newer version, or take its file.
      </p>
      <a className="btn main mt-4" href={`/api/shoots/${id}/export`} download>
        Take its file
      </a>
    </main>
  )
}
