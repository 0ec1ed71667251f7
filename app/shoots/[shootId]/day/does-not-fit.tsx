'use client'
import type { DayView } from './day-view'

/** What does not fit, each with the one change that would save it. */
export function DoesNotFit({ view }: { view: DayView }) {
  if (view.misfits.length === 0)
    return (
      <section aria-label="Does not fit">
        <h2>Everything fits</h2>
      </section>
    )
  return (
    <section aria-label="Does not fit">
      <h2>Does not fit</h2>
      {view.misfits.map((misfit) => (
        <div className="conflict" key={misfit.key}>
          {misfit.title && <h3>{misfit.title}</h3>}
          <p>{misfit.why}</p>
          {misfit.way && <p className="way">{misfit.way}</p>}
        </div>
      ))}
    </section>
  )
}

export function Holds({ view }: { view: DayView }) {
  return (
    <section aria-label="Holds">
      <h2>Holds</h2>
      <dl className="facts-list">
        {view.holds.map(([figure, words]) => (
          <div key={figure + words} className="contents">
            <dt className="time">{figure}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
