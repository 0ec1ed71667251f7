'use client'
import { loggedMeal, meal, mealBegins, mealEnds } from '../words/sheets'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

/** The crew eats, or is back. */
export function MealSheet({ close }: SheetProps) {
  const { session, log } = useSet()
  const last = session.told.meals.at(-1)?.entry.is
  const say = (is: 'begins' | 'ends') => {
    log({ kind: 'meal', is }, loggedMeal(is))
    close()
  }
  return (
    <Sheet title={meal} close={close}>
      <div className="foot">
        <div className="thumb two">
          <button type="button" className={last === 'begins' ? '' : 'main'} onClick={() => say('begins')}>
            {mealBegins}
          </button>
          <button type="button" className={last === 'begins' ? 'main' : ''} onClick={() => say('ends')}>
            {mealEnds}
          </button>
        </div>
      </div>
    </Sheet>
  )
}
