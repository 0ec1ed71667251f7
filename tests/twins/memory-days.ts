/** Four cooks of one made-up cooker: three are logged, and the fourth is forecast before its fire with what they taught. */
import type { CookerKind, CookPlan } from '../../lib/model/cook'
import { forecastCook } from '../../lib/model/forecast-cook'
import { combineLessons, rememberCook } from '../../lib/model/memory'
import { medianOf, quantileOf, sortedCopy } from '../../lib/model/quantiles'
import { type Chance, chanceOf } from '../../lib/model/random'
import { drawLatents, driftOf, type Latents } from '../../lib/model/spread'
import { MEMORY, writtenMemory } from '../../lib/plan/cooker-memory-fields'
import { metres } from '../../lib/units'
import { type SolidTwin, solidCook } from './truth-solid'
import { ROASTS, type Roasted, roastPlan, type Twin } from './twin'

/** Cookers with a fire: ovens of a kind differ less, and there is less to remember. */
const KINDS: readonly CookerKind[] = ['kettle-charcoal', 'ceramic-charcoal', 'gas-grill', 'offset-wood']
const COOKS = 4
const TRIES = 20
const MEMBERS = 256
/** A crew with a tape: so far off each side, in the logarithm. */
const MEASURED = 0.03

/** The fourth cook's pull as it was forecast after so many logged ones. */
export interface Guess {
  readonly cooks: number
  readonly measured: boolean
  readonly errorMin: number
  readonly inside: boolean
  readonly widthMin: number
}

/**
 * The cooker's own are its level, film, vapour, walls and habits; the meat's, its fire's and the day's are drawn for each cook. The
 * forecaster's shares of the two (`BELONGS`) are others.
 */
function drawsOf(seed: number, cooker: number, cook: number): Latents {
  const own = drawLatents(seed + 177, cooker)
  const day = drawLatents(seed + 178, COOKS * TRIES * cooker + cook)
  return {
    ...day,
    shared: 0,
    h: own.h / 0.8,
    k: day.k / 0.71,
    vapour: own.vapour,
    emissivity: own.emissivity,
    level: 0.95 * own.level + 0.3 * day.level,
    warmUp: own.warmUp,
    climb: own.climb,
    loss: own.loss,
  }
}

/** A crew cooks its dish again and again, of another piece of meat each time. */
export function dayOf(seed: number, cooker: number, cook: number): SolidTwin {
  for (let again = 0; again < TRIES; again++) {
    const place = COOKS * again + cook
    const stream = COOKS * TRIES * cooker + place
    const chance = chanceOf(seed, 10_000 + stream, 900)
    const roast = ROASTS[cooker % ROASTS.length] as Roasted
    const plan = roastPlan('steady', { ...roast, cooker: KINDS[cooker % KINDS.length] as CookerKind }, chance)
    const drift = () => driftOf(seed + 178, stream)
    const made = solidCook(plan, { z: drawsOf(seed, cooker, place), drift, fades: false }, chance)
    if (made) return { ...made, plan: { ...plan, roast: { ...plan.roast, ...withTape(made.sides, chance) } } }
  }
  throw new Error(`cooker ${cooker} of seed ${seed} never brings a roast to its pull`)
}
function withTape({ thickness, width, length }: SolidTwin['sides'], chance: Chance) {
  const read = (side: number) => metres(Math.round(1000 * side * Math.exp(MEASURED * chance.normal())) / 1000)
  return { thickness: read(thickness), width: read(width), length: read(length) }
}
function weighedOnly(plan: CookPlan): CookPlan {
  const { thickness: _t, width: _w, length: _l, ...roast } = plan.roast
  return { ...plan, roast }
}

export function guessesOf(seed: number, cooker: number): Guess[] {
  const days = Array.from({ length: COOKS }, (_, cook) => dayOf(seed, cooker, cook))
  return [true, false].flatMap((measured) => guessesWith(days, measured, seed))
}
function guessesWith(days: readonly SolidTwin[], measured: boolean, seed: number): Guess[] {
  const told = ({ plan }: SolidTwin) => (measured ? plan : weighedOnly(plan))
  const lessons = days.slice(0, -1).map((day, i) => {
    const { readings, marks } = day
    return rememberCook(told(day), { readings, marks }, { cook: 'hero', date: `day ${i}`, seed, kernel: 'simd' })
  })
  const last = days.at(-1) as SolidTwin
  return Array.from({ length: COOKS }, (_, cooks) => {
    const known = combineLessons(lessons.slice(0, cooks).filter((lesson) => lesson !== undefined))
    const plan = told(last)
    // as the shoot file has it
    const memory = known && MEMORY.parse(writtenMemory(known))
    const asked = memory ? { ...plan, cooker: { ...plan.cooker, memory } } : plan
    return { cooks, measured, ...scoreOf(asked, last, seed) }
  })
}
function scoreOf(plan: CookPlan, { pullS }: Twin, seed: number) {
  const pulls = sortedCopy(forecastCook(plan, { members: MEMBERS, seed, kernel: 'simd' }).moments.pull as Float64Array)
  const [low, high] = [quantileOf(pulls, 0.1), quantileOf(pulls, 0.9)]
  return {
    errorMin: (medianOf(pulls) - pullS) / 60,
    inside: low <= pullS && pullS <= high,
    widthMin: (high - low) / 60,
  }
}
