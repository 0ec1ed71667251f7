'use client'
import { useState } from 'react'
import { markKey } from '@/lib/log/mark-key'
import type { MomentId } from '@/lib/model/moment-ids'
import { momentWindow } from '@/lib/session/board-view'
import type { SessionCook } from '@/lib/session/session-day'
import { minutes } from '@/lib/units'
import { everyMomentIsMarked, itHasHappened, marked } from '../words/sheets'
import { AgoChoice } from './choice'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

/** A moment has come: one tap. The next one stands first. */
export function MarkSheet({ close }: SheetProps) {
  const { session, facts, clock, log } = useSet()
  const [ago, setAgo] = useState(0)
  const { cooks } = session.day
  const left = (cook: SessionCook) => cook.moments.filter((moment) => !session.told.marks[markKey(cook.id, moment)])
  const mark = (cook: SessionCook, moment: MomentId, name: string) => {
    log({ kind: 'mark', cook: cook.id, moment }, marked(name), minutes(ago))
    close()
  }
  const due = (cook: SessionCook, moment: MomentId) => {
    const { likely } = momentWindow(session, facts, cook.id, moment)
    return likely === null ? 'may never come' : `about ${clock(likely)}`
  }
  return (
    <Sheet title={itHasHappened} close={close}>
      <AgoChoice value={ago} onChoose={setAgo} />
      {cooks.map((cook) => (
        <section key={cook.id} aria-label={cook.id}>
          {cooks.length > 1 && <h3>{cook.id}</h3>}
          {left(cook).length === 0 && <p className="key-last">{everyMomentIsMarked}</p>}
          <div className="thumb two">
            {left(cook).map((moment, i) => {
              const name = cook.names[moment] ?? moment.replaceAll('-', ' ')
              return (
                <button
                  key={moment}
                  type="button"
                  className={i === 0 ? 'main wide' : ''}
                  onClick={() => mark(cook, moment, name)}
                >
                  {name}
                  <small>{due(cook, moment)}</small>
                </button>
              )
            })}
          </div>
        </section>
      ))}
    </Sheet>
  )
}
