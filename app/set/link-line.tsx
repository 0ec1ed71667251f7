'use client'
import { useState } from 'react'
import {
  alertsGo,
  catchingUp,
  forecastIsThisPhonesOwn,
  hereNoneLost,
  keptHereNoneLost,
  logIsBeingRead,
  makeThisPhoneTrustSet,
  noSignal,
  nothingGoesOut,
  onWay,
  rehearsalWords,
  seenWords,
  serverDidNotTakeEntry,
  wait,
  waits,
  whatIsLoggedGoesOut,
} from '../words/set'
import { entriesWord } from './feed/merged-words'
import { SERVER_AWAY } from './feed/wire'
import { useSet } from './set-context'

/** The bar's right end: whether what was logged is safe elsewhere. */
export function LinkMark() {
  const { snapshot } = useSet()
  const { link, waiting, rehearsal, held } = snapshot
  if (rehearsal) return <span>{rehearsalWords}</span>
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
  const refused = aside.map(({ sentence }) => serverDidNotTakeEntry(sentence))
  const news = [...refused, ...(lacks === null ? [] : [lacks]), ...merged].find((sentence) => !seen.has(sentence))
  return (
    <>
      {link === 'cut-off' && !held && (
        <p className="status" role="status">
          <b>{noSignal}</b> {alertsGo(entriesWord(waiting))} {waiting === 1 ? waits : wait} {hereNoneLost}
          {forecastBy === 'this device' && forecastIsThisPhonesOwn}
        </p>
      )}
      {link === 'catching-up' && !held && (
        <p className="status" role="status">
          <b>{catchingUp}</b> {waiting > 0 ? onWay(entriesWord(waiting)) : logIsBeingRead}
        </p>
      )}
      {held && (
        <p className="status" role="status">
          <b>{held === SERVER_AWAY ? held : nothingGoesOut}</b> {held === SERVER_AWAY ? whatIsLoggedGoesOut : held}{' '}
          {waiting > 0 && keptHereNoneLost(entriesWord(waiting))}
        </p>
      )}
      {news && (
        <p className="status news">
          <span>
            {news}{' '}
            {news === lacks && canTrust && !window.isSecureContext && (
              <a className="textlink" href="/trust">
                {makeThisPhoneTrustSet}
              </a>
            )}
          </span>
          <button type="button" className="textlink" onClick={() => setSeen(new Set([...seen, news]))}>
            {seenWords}
          </button>
        </p>
      )}
      <p className={said ? 'said' : 'sr-only'} role="status" key={said}>
        {said}
      </p>
    </>
  )
}
