import { describe, expect, it } from 'vitest'
import { cutById } from '../../../lib/model/cuts'
import type { Forecast } from '../../../lib/model/forecast'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { LOGGED, tryFilmed } from './filmed-sayings'
import { chance, madeUpForecast } from './made-up-forecast'
import { randomLog } from './random-log'
import { randomPlan } from './random-plan'
import { type CardContext, CHECKABLE, tryKind } from './sayings'

const CUTS = ['lamb-leg-bone-in', 'beef-rib-bone-in', 'pork-loin-bone-in', 'beef-top-round', 'pork-leg-bone-in']

interface Given {
  readonly forecast: Forecast
  readonly random: () => number
  readonly card: CardContext
}
const given = (forecast: Forecast, random: () => number): Given => {
  const cut = cutById(forecast.cook.roast.cut)
  if (!cut) throw new RangeError(`no cut ${forecast.cook.roast.cut}`)
  return { forecast, random, card: { cook: 'hero', animal: cut.animal, boneShare: cut.boneShare, authority: 'US' } }
}

function madeUp(i: number): Given {
  const random = chance(1000 + i)
  const made = {
    roastMin: 60 + random() * 240,
    pull: 44 + Math.round(random() * 14),
    slicedC: 46 + random() * 30,
    cut: CUTS[i % CUTS.length],
    restMin: 10 + Math.round(random() * 30),
    spread: 0.3 + random() * 2,
  }
  return given(madeUpForecast(made, i), random)
}
function modelled(i: number): Given {
  const random = chance(2000 + i)
  return given(forecastCook(randomPlan(random).plan, { seed: i, members: 64 }), random)
}

const trials = (all: readonly Given[], kind: (typeof CHECKABLE)[number]) => {
  const done = all.map(({ forecast, card, random }) => tryKind(forecast, kind, card, random))
  return { tried: done.filter((t) => t.tried).length, faults: done.flatMap((t) => t.faults) }
}

describe('true and false sentences over 50 made-up windows', () => {
  const all = Array.from({ length: 50 }, (_, i) => madeUp(i))
  it.each(CHECKABLE)('%s: what is inside is never contradicted, what is beside it always, with its figure', (kind) => {
    const { tried, faults } = trials(all, kind)
    expect(faults).toEqual([])
    // Near a border no word of doneness is two windows off, and neither sentence of safety is false.
    expect(tried).toBeGreaterThanOrEqual(kind === 'doneness' ? 30 : kind === 'safety' ? 40 : 50)
  })
})

describe('true and false sentences over the model’s own forecasts of 16 random plans', () => {
  const all = Array.from({ length: 16 }, (_, i) => modelled(i))
  it.each(CHECKABLE)('%s', (kind) => {
    const { tried, faults } = trials(all, kind)
    expect(faults).toEqual([])
    expect(tried).toBeGreaterThan(0)
  })
})

/** A probe out of the meat knows no rise; near a border no word is far off. */
const LESS_OFTEN: readonly string[] = ['carryover-rise', 'doneness', 'safety']

describe('true and false sentences of 24 made-up days that were filmed', () => {
  const all = Array.from({ length: 24 }, (_, i) => madeUp(100 + i)).flatMap((one) => {
    const filmed = randomLog(one.forecast, one.random)
    return filmed ? [{ ...one, filmed }] : []
  })
  const tryAll = (kind: (typeof LOGGED)[number]) =>
    all.map(({ forecast, filmed, card, random }) => tryFilmed(forecast, filmed, kind, card, random))
  it.each(LOGGED)('%s: the filmed cook decides, whatever the model says', (kind) => {
    const done = tryAll(kind)
    expect(done.flatMap((trial) => trial.faults)).toEqual([])
    expect(done.filter((trial) => trial.tried).length).toBeGreaterThan(LESS_OFTEN.includes(kind) ? 5 : 20)
  })
  it('in some of them the model alone would have found otherwise', () => {
    expect(tryAll('roast-time').filter(({ againstModel }) => againstModel > 0).length).toBeGreaterThan(3)
  })
})
