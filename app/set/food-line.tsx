'use client'
import { countSpoken } from '@/lib/session/board-words'
import { foodClock } from '@/lib/session/food-clock'
import { useSet } from './set-context'

export const useFoodClocks = () => {
  const { session } = useSet()
  return [...session.day.cooks, ...(session.day.sides ?? [])].map((food) => foodClock(session, food))
}

/** On the first page only while something stands out: until when it may. */
export function FoodLine() {
  const { clock, now } = useSet()
  const out = useFoodClocks().filter(({ is }) => is === 'out')
  return out.map(({ food, discardAt, past }) => (
    <p key={food} className="food-line">
      <b>{food}</b>{' '}
      {past || discardAt === null
        ? 'has stood out too long: throw it away.'
        : `stands out, until ${clock(discardAt)} at the latest (${countSpoken(discardAt, now)}).`}
    </p>
  ))
}
