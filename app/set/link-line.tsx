'use client'
import { useEffect, useState } from 'react'
import type { Instant } from '@/lib/units'
import {
  alertsGo,
  catchingUp,
  forecastIsThisPhonesOwn,
  hereNoneLost,
  keptHereNoneLost,
  logIsBeingRead,
  makeThisPhoneTrustSet,
  noSignalSince,
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

/** As long as a phone may catch up without a line that would move the board. */
const LASTING_MS = 3000
/** Since when the link is as it is, and whether for a while. */
function useLasting(link: string): { readonly since: Instant; readonly lasting: boolean } {
  const { feed } = useSet()
  const [is, setIs] = useState({ link, since: feed.now(), lasting: false })
  useEffect(() => {
    setIs((was) => (was.link === link ? was : { link, since: feed.now(), lasting: false }))
    const timer = setTimeout(() => setIs((was) => ({ ...was, lasting: true })), LASTING_MS)
    return () => clearTimeout(timer)
  }, [link, feed])
  return is
}

/** One line, only while there is something to say: cut off, catching up, what a merge decided, what this phone lacks. */
export function LinkLine({ lacks, canTrust = false }: { lacks: string | null; canTrust?: boolean }) {
  const { snapshot, said, clock } = useSet()
  const { link, waiting, forecastBy, merged, aside = [], held } = snapshot
  const { since, lasting } = useLasting(link)
  const [seen, setSeen] = useState<ReadonlySet<string>>(new Set())
  const refused = aside.map(({ sentence }) => serverDidNotTakeEntry(sentence))
  const news = [...refused, ...(lacks === null ? [] : [lacks]), ...merged].find((sentence) => !seen.has(sentence))
  return (
    <>
      {link === 'cut-off' && !held && (
        <p className="status" role="status">
          <b>{noSignalSince(clock(since))}</b> {alertsGo(entriesWord(waiting))} {waiting === 1 ? waits : wait}{' '}
          {hereNoneLost}
          {forecastBy === 'this device' && forecastIsThisPhonesOwn}
        </p>
      )}
      {link === 'catching-up' && lasting && !held && (
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
