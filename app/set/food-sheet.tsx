'use client'
import { useState } from 'react'
import { minutes } from '@/lib/units'
import { backHotOrCold, loggedFood, served, standsOut, theFood, thrownAway } from '../words/sheets'
import { AgoChoice, CookChoice } from './choice'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

const WHERE = [
  ['out', standsOut],
  ['back', backHotOrCold],
  ['served', served],
  ['discarded', thrownAway],
] as const

/** Where the food is: its clock starts, stops or ends. */
export function FoodSheet({ close }: SheetProps) {
  const { session, log } = useSet()
  const foods = [...session.day.cooks, ...(session.day.sides ?? [])]
  const [food, setFood] = useState(foods[0]?.id ?? '')
  const [ago, setAgo] = useState(0)
  const say = (is: string, words: string) => {
    log({ kind: 'food', cook: food, is }, loggedFood(food, words.toLowerCase()), minutes(ago))
    close()
  }
  return (
    <Sheet title={theFood} close={close}>
      <CookChoice cooks={foods} value={food} onChoose={setFood} />
      <AgoChoice value={ago} onChoose={setAgo} />
      <div className="foot">
        <div className="thumb two">
          {WHERE.map(([is, words]) => (
            <button key={is} type="button" onClick={() => say(is, words)}>
              {words}
            </button>
          ))}
        </div>
      </div>
    </Sheet>
  )
}
