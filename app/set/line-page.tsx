'use client'
import { theHeatLine } from '../words/heat-line'
import { LiveLine } from './live-line'
import { useSet } from './set-context'

/** The heat line of the running day: what was read, what is expected, and every moment with its window. */
export function LinePage() {
  const { session } = useSet()
  return (
    <section aria-label={theHeatLine}>
      <h1 className="page-title">{theHeatLine}</h1>
      {session.forecast && <p className="fine">{session.forecast.reason}</p>}
      {session.day.cooks.map((cook) => (
        <article key={cook.id}>
          {session.day.cooks.length > 1 && <h2 className="page-sub">{cook.id}</h2>}
          <LiveLine cook={cook.id} on="board" />
        </article>
      ))}
    </section>
  )
}
