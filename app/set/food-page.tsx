'use client'
import { countSpoken } from '@/lib/session/board-words'
import type { FoodClock } from '@/lib/session/food-clock'
import { formatDuration, formatTemp } from '@/lib/units'
import {
  allowedWords,
  foodLead,
  foodOutBackServed,
  foodWords,
  limitWords,
  noItHasStoodOut,
  noItWasThrownAway,
  notSaidByPlan,
  notYet,
  outWords,
  sinceWords,
  tastingHead,
  theFood,
  throwItAway,
  throwItAwayNow,
  usdaFsis,
  whoseRule,
  withCare,
} from '../words/sheets'
import { useFoodClocks } from './food-line'
import { useSet } from './set-context'

const WHERE: Readonly<Record<FoodClock['is'], string>> = {
  'not-out': 'not out yet',
  out: 'stands out',
  back: 'back, hot or cold',
  served: 'served',
  discarded: 'thrown away',
}

/** The food-safety clock: out since, limit, tasting, when it goes into the bin, and whose rule that is. */
export function FoodPage({ act }: { act: () => void }) {
  const clocks = useFoodClocks()
  return (
    <section aria-label={foodWords}>
      <h1 className="page-title">{theFood}</h1>
      {clocks.map((food) => (
        <Food key={food.food} of={food} />
      ))}
      <p className="fine">{foodLead}</p>
      <div className="foot">
        <div className="thumb">
          <button type="button" className="main" onClick={act}>
            {foodOutBackServed}
          </button>
        </div>
      </div>
    </section>
  )
}

function Food({ of }: { of: FoodClock }) {
  const { facts, clock, now, units } = useSet()
  const rules = facts.cooks.find(({ id }) => id === of.food)
  const air = of.air === null ? 'planned air' : `air at ${formatTemp(of.air, units)}`
  return (
    <article className="food">
      <h2>{of.food}</h2>
      <p className="food-is">
        {WHERE[of.is]}
        {of.since !== null && sinceWords(clock(of.since))}
      </p>
      {of.discardAt !== null && (
        <p className="food-by">
          {of.past ? throwItAwayNow : throwItAway(clock(of.discardAt), countSpoken(of.discardAt, now))}
        </p>
      )}
      <dl>
        <dt>{limitWords}</dt>
        <dd>{outWords(formatDuration(of.limit), air)}</dd>
        <dt>{tastingHead}</dt>
        <dd>{tastingWords(of, rules?.tasting)}</dd>
        <dt>{whoseRule}</dt>
        <dd>{rules?.whose ?? usdaFsis}</dd>
      </dl>
    </article>
  )
}

function tastingWords({ is, past }: FoodClock, tasting: { allowed: boolean; why: string } | undefined): string {
  if (is === 'discarded') return noItWasThrownAway
  if (past) return noItHasStoodOut
  if (is === 'not-out') return notYet
  if (!tasting) return notSaidByPlan
  return `${tasting.allowed ? allowedWords : withCare} ${tasting.why}`
}
