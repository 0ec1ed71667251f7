'use client'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

/** The crew eats, or is back. */
export function MealSheet({ close }: SheetProps) {
  const { session, log } = useSet()
  const last = session.told.meals.at(-1)?.entry.is
  const say = (is: 'begins' | 'ends') => {
    log({ kind: 'meal', is }, `Logged: the meal ${is}.`)
    close()
  }
  return (
    <Sheet title="Meal" close={close}>
      <div className="foot">
        <div className="thumb two">
          <button type="button" className={last === 'begins' ? '' : 'main'} onClick={() => say('begins')}>
            Meal begins
          </button>
          <button type="button" className={last === 'begins' ? 'main' : ''} onClick={() => say('ends')}>
            Meal ends
          </button>
        </div>
      </div>
    </Sheet>
  )
}
