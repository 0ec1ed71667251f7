'use client'
import { countSpoken } from '@/lib/session/board-words'
import type { FoodClock } from '@/lib/session/food-clock'
import { formatDuration, formatTemp } from '@/lib/units'
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
    <section aria-label="Food">
      <h1 className="page-title">The food</h1>
      {clocks.map((food) => (
        <Food key={food.food} of={food} />
      ))}
      <p className="fine">
        It counts from the first slice, or from when somebody says that it stands out. Ask the local food-safety
        authority, whose rules go first.
      </p>
      <div className="foot">
        <div className="thumb">
          <button type="button" className="main" onClick={act}>
            Food out, back, served
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
        {of.since !== null && ` since ${clock(of.since)}`}
      </p>
      {of.discardAt !== null && (
        <p className="food-by">
          {of.past
            ? 'Throw it away now.'
            : `Throw it away at ${clock(of.discardAt)}, in ${countSpoken(of.discardAt, now)}.`}
        </p>
      )}
      <dl>
        <dt>Limit</dt>
        <dd>
          {formatDuration(of.limit)} out ({air})
        </dd>
        <dt>Tasting</dt>
        <dd>{tastingWords(of, rules?.tasting)}</dd>
        <dt>Whose rule</dt>
        <dd>{rules?.whose ?? 'USDA FSIS'}</dd>
      </dl>
    </article>
  )
}

function tastingWords({ is, past }: FoodClock, tasting: { allowed: boolean; why: string } | undefined): string {
  if (is === 'discarded') return 'No: it was thrown away.'
  if (past) return 'No: it has stood out too long.'
  if (is === 'not-out') return 'Not yet.'
  if (!tasting) return 'Not said by the plan.'
  return `${tasting.allowed ? 'Allowed.' : 'With care.'} ${tasting.why}`
}
