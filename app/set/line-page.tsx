'use client'
import { markKey } from '@/lib/log/mark-key'
import { momentWindow } from '@/lib/session/board-view'
import type { SessionCook } from '@/lib/session/session-day'
import { LiveLine } from './live-line'
import { useSet } from './set-context'

/** The heat line of the running day: what was read, what is expected, and every moment with its window. */
export function LinePage() {
  const { session } = useSet()
  return (
    <section aria-label="The heat line">
      <h1 className="page-title">The heat line</h1>
      {session.forecast && <p className="fine">{session.forecast.reason}</p>}
      {session.day.cooks.map((cook) => (
        <article key={cook.id}>
          {session.day.cooks.length > 1 && <h2 className="page-sub">{cook.id}</h2>}
          <LiveLine cook={cook.id} width={354} height={300} />
          <Moments cook={cook} />
        </article>
      ))}
    </section>
  )
}

function Moments({ cook }: { cook: SessionCook }) {
  const { session, facts, clock } = useSet()
  const windows = cook.moments.map((moment) => ({ moment, ...momentWindow(session, facts, cook.id, moment) }))
  const inTime = windows.sort((a, b) => (a.likely ?? Infinity) - (b.likely ?? Infinity))
  return (
    <ol className="moments">
      {inTime.map(({ moment, early, likely, late }) => {
        const marked = session.told.marks[markKey(cook.id, moment)]
        return (
          <li key={moment} className={marked ? 'past' : ''}>
            <span className="time">{likely === null ? '–' : clock(likely)}</span>
            <span>
              {cook.names[moment] ?? moment.replaceAll('-', ' ')}
              {marked && ', marked'}
            </span>
            <span className="win">
              {!marked && early !== null && late !== null && spanWords(clock(early), clock(late))}
              {likely === null && 'may never come'}
            </span>
          </li>
        )
      })}
    </ol>
  )
}

const spanWords = (from: string, to: string) => (from === to ? from : `${from} to ${to}`)
