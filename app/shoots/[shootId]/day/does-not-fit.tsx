'use client'
import { withEdits } from '@/lib/plan/edit'
import { offeredTasks, takeTask } from '@/lib/plan/offered-tasks'
import type { ShootDocument } from '@/lib/plan/shoot'
import { WithTerms } from '../../../ui/with-terms'
import { doesNotFit, doneWay, doSo, doSoWay, everythingFits, holdsWords, notByOneCamera } from '../../../words/day'
import type { DayView } from './day-view'

interface MisfitProps {
  readonly view: DayView
  readonly document: ShootDocument
  readonly act: (words: string, next: ShootDocument) => void
}

/** What does not fit, each with the one change that would save it, and the press that makes it. */
export function DoesNotFit({ view, document, act }: MisfitProps) {
  if (view.misfits.length === 0)
    return (
      <section aria-label={doesNotFit}>
        <h2>{everythingFits}</h2>
      </section>
    )
  return (
    <section aria-label={doesNotFit}>
      <h2>{doesNotFit}</h2>
      {view.misfits.map((misfit) => (
        <div className="conflict" key={misfit.key}>
          {misfit.title && <h3>{misfit.title}</h3>}
          <p>{misfit.why}</p>
          {misfit.rivals && <p>{misfit.rivals}</p>}
          {misfit.way && <p className="way">{misfit.way}</p>}
          {misfit.unwatched && <TakeWatch document={document} act={act} />}
          {misfit.edits && (
            <button
              type="button"
              className="btn mt-2"
              aria-label={doSoWay(misfit.way ?? '')}
              onClick={() => act(doneWay(misfit.way ?? ''), withEdits(document, misfit.edits ?? []))}
            >
              {doSo}
            </button>
          )}
        </div>
      ))}
    </section>
  )
}

/** The first watch on offer: the fire first, its ash after. */
function TakeWatch({ document, act }: Omit<MisfitProps, 'view'>) {
  const watch = offeredTasks(document).find(({ task }) => task.id.endsWith('watch'))
  if (!watch) return null
  const { title, needs } = watch.task
  const whom = Array.isArray(needs) ? needs.join(', ') : ''
  return (
    <button type="button" className="btn mt-2" onClick={() => act(`${title}: ${whom}.`, takeTask(document, watch))}>
      {`${title}: ${whom}`}
    </button>
  )
}

export function Holds({ view }: { view: DayView }) {
  return (
    <section aria-label={holdsWords}>
      <h2>{holdsWords}</h2>
      <dl className="facts-list">
        {view.holds.map(([figure, words]) => (
          <div key={figure + words} className="contents">
            <dt className="time">{figure}</dt>
            <dd>
              <WithTerms text={words} of={{ chance: 'chance', caught: 'caught' }} />
            </dd>
          </div>
        ))}
      </dl>
      {view.pairs.length > 0 && (
        <details>
          <summary>{notByOneCamera}</summary>
          <ul className="small">
            {view.pairs.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}
