'use client'
import { countSpoken } from '@/lib/session/board-words'
import { foodClock } from '@/lib/session/food-clock'
import { hasStoodOutTooLong, standsOutUntilAtLatest } from '../words/set'
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
        ? hasStoodOutTooLong
        : standsOutUntilAtLatest(clock(discardAt), countSpoken(discardAt, now))}
    </p>
  ))
}
