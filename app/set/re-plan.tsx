'use client'
import type { Layout } from '@/lib/day/layout'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { CookSet } from '@/lib/session/adopted'
import type { PlannedMove } from '@/lib/session/compare-plans'
import { RE_PLAN } from '@/lib/session/re-planned'
import { changeDocument, type TriedOnSet } from '@/lib/session/what-if-on-set'
import { Working } from '../ui/working'
import {
  backInDay,
  droppedWords,
  layingOutRestOfDay,
  nothingNeedsToMove,
  rePlan,
  rePlanFromNow,
  restOfDay,
  sentToCrew,
} from '../words/desk'
import { lastsHere } from '../words/working'
import { movesInWords } from './move-words'
import { Moves } from './moves'
import { useSet } from './set-context'
import { useRePlan } from './use-re-plan'
import { WhatIfs } from './what-ifs'

export interface PlannedDay {
  readonly version: number
  readonly document: ShootDocument
  /** This morning's. */
  readonly layout: Layout
  readonly sets: readonly CookSet[]
}

/** The rest of the day anew, as it is or as it might be: every move is shown before anybody is told. */
export function RePlan({ day }: { day: PlannedDay }) {
  const { session, feed } = useSet()
  const { answer, working, ask, forget } = useRePlan()
  const send = useSend(day, forget)
  const { document, layout } = day
  const askFor = (tried: TriedOnSet | null) => {
    const { told, day: now, calls } = session
    ask({ document, layout, told, now: feed.now(), tried, day: now, calls })
  }
  const tried = answer?.ok ? answer.tried : null
  return (
    <section aria-label={rePlan}>
      <h2>{restOfDay}</h2>
      <button type="button" className="btn" disabled={working} onClick={() => askFor(null)}>
        {rePlanFromNow}
      </button>
      <WhatIfs sets={day.sets} working={working} ask={askFor} />
      <Working what={working ? layingOutRestOfDay : null} lasts={lastsHere} />
      <div role="status">
        {answer && !answer.ok && <p className="says">{answer.sentence}</p>}
        {answer?.ok && tried && (
          <p className="mt-4">
            <b>{tried.title}.</b> {answer.lines.join(' ')}
          </p>
        )}
        {answer?.ok && answer.moves.length === 0 && <p className="mt-2">{nothingNeedsToMove}</p>}
      </div>
      {answer?.ok && (tried || answer.moves.length > 0) && (
        <Moves moves={answer.moves} tried={tried} send={() => send(answer.moves, tried)} leave={forget} />
      )}
    </section>
  )
}

/** The log tells the crew: what was adopted, what moves, and what is dropped or comes back. */
function useSend({ version }: PlannedDay, sent: () => void) {
  const { session, log } = useSet()
  return (moves: readonly PlannedMove[], tried: TriedOnSet | null) => {
    if (tried) {
      const { title, change } = tried
      log({ kind: 'what-if-adopted', version, what: title, change: changeDocument(change) }, sentToCrew)
    }
    const places = moves.flatMap(({ id, place }) => (place ? [{ id, ...place }] : []))
    const gone = moves.flatMap(({ id, to }) => (to === null && !id.startsWith('shot-') ? [id] : []))
    if (moves.length > 0)
      log(
        {
          kind: 'plan-change',
          version,
          what: movesInWords(moves),
          moves: places,
          ...(gone.length > 0 ? { gone } : {}),
        },
        sentToCrew,
      )
    for (const { id, to, title } of moves) {
      if (!id.startsWith('shot-')) continue
      const shot = id.slice(5)
      if (to === null) log({ kind: 'shot-state', shot, state: 'dropped', why: RE_PLAN }, droppedWords(title))
      else if (session.told.shots[shot]?.state === 'dropped')
        log({ kind: 'shot-state', shot, state: 'ahead', why: RE_PLAN }, backInDay(title))
    }
    sent()
  }
}
