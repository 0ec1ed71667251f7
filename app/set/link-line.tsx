'use client'
import { useState } from 'react'
import { entriesWord } from './feed/merged-words'
import { SERVER_AWAY } from './feed/wire'
import { useSet } from './set-context'

/** The bar's right end: whether what was logged is safe elsewhere. */
export function LinkMark() {
  const { snapshot } = useSet()
  const { link, waiting, rehearsal, held } = snapshot
  if (rehearsal) return <span>rehearsal</span>
  const words =
    link === 'live'
      ? waiting > 0
        ? `${waiting} on the way`
        : 'saved'
      : link === 'catching-up'
        ? 'catching up'
        : held
          ? held === SERVER_AWAY
            ? 'server away'
            : 'not let in'
          : 'no signal'
  return <span className={link === 'live' ? '' : 'loud'}>{words}</span>
}

/** One line, only while there is something to say: cut off, catching up, what a merge decided, what this phone lacks. */
export function LinkLine({ lacks, canTrust = false }: { lacks: string | null; canTrust?: boolean }) {
  const { snapshot, said } = useSet()
  const { link, waiting, forecastBy, merged, aside = [], held } = snapshot
  const [seen, setSeen] = useState<ReadonlySet<string>>(new Set())
  const refused = aside.map(({ sentence }) => `The server did not take an entry: ${sentence} It is kept here.`)
  const news = [...refused, ...(lacks === null ? [] : [lacks]), ...merged].find((sentence) => !seen.has(sentence))
  return (
    <>
      {link === 'cut-off' && !held && (
        <p className="status" role="status">
          <b>No signal.</b> Alerts go on from this phone. {entriesWord(waiting)} {waiting === 1 ? 'waits' : 'wait'}{' '}
          here, none lost.
          {forecastBy === 'this device' && ' The forecast is this phone’s own.'}
        </p>
      )}
      {link === 'catching-up' && !held && (
        <p className="status" role="status">
          <b>Catching up.</b> {waiting > 0 ? `${entriesWord(waiting)} on the way.` : 'The log is being read.'}
        </p>
      )}
      {held && (
        <p className="status" role="status">
          <b>{held === SERVER_AWAY ? held : 'Nothing goes out.'}</b>{' '}
          {held === SERVER_AWAY ? 'What is logged goes out by itself, and alerts go on.' : held}{' '}
          {waiting > 0 && `${entriesWord(waiting)} kept here, none lost.`}
        </p>
      )}
      {news && (
        <p className="status news">
          <span>
            {news}{' '}
            {news === lacks && canTrust && !window.isSecureContext && (
              <a className="textlink" href="/trust">
                Make this phone trust the set
              </a>
            )}
          </span>
          <button type="button" className="textlink" onClick={() => setSeen(new Set([...seen, news]))}>
            Seen
          </button>
        </p>
      )}
      <p className={said ? 'said' : 'sr-only'} role="status" key={said}>
        {said}
      </p>
    </>
  )
}
