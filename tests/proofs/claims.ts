import { buildCard, checkCard } from '../../lib/card/card'
import type { ClaimKind } from '../../lib/card/claim'
import { forecastCook } from '../../lib/model/forecast-cook'
import { parseShootText } from '../../lib/plan/parse'
import { readFileSync } from 'node:fs'
import { toCookPlan } from '../../lib/plan/cook-plan'
import { chance } from '../unit/card/made-up-forecast'
import { randomPlan } from '../unit/card/random-plan'
import { CHECKABLE, tryKind } from '../unit/card/sayings'

/** Each kind is tried this often; plans that have no such thing (no sear, no word of doneness far enough off) are passed by. */
const EACH = 50
const MOST_PLANS = 400

/** Each kind of claim, once true and once false by two windows, over random plans with full ensembles. */
function tryAll(seed: number): { plans: number; tried: Record<string, number>; faults: string[] } {
  const tried = Object.fromEntries(CHECKABLE.map((kind) => [kind, 0])) as Record<ClaimKind, number>
  const faults: string[] = []
  let plans = 0
  for (; plans < MOST_PLANS && CHECKABLE.some((kind) => tried[kind] < EACH); plans++) {
    const random = chance(seed * 1000 + plans)
    const { plan, cut } = randomPlan(random)
    const forecast = forecastCook(plan, { seed: seed + plans })
    const card = { cook: 'hero', animal: cut.animal, boneShare: cut.boneShare, authority: 'US' }
    for (const kind of CHECKABLE) {
      const trial = tryKind(forecast, kind, card, random)
      if (trial.tried) tried[kind]++
      faults.push(...trial.faults)
    }
  }
  return { plans, tried, faults }
}

const NAMED = ['It is safe for everybody at 52 °C.', 'It is edge to edge pink.', 'It takes an hour in all.']
/** The three sentences said of the pork loin; each must be contradicted and told what is true instead. */
function namedOfPorkLoin(seed: number): string[] {
  const read = parseShootText(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8'))
  if (!read.ok) throw new Error('The pork loin does not read.')
  const shoot = { ...read.value, card: { steps: NAMED.map((text, i) => ({ id: `named-${i}`, text })) } }
  const forecasts = new Map(shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed })]))
  const checked = checkCard(buildCard(shoot, forecasts), forecasts)
  return NAMED.filter((text) => !checked.some((c) => c.sentence === text && c.finding === 'contradicted' && c.figure && c.trueSentence))
}

export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const { plans, tried, faults } = tryAll(seed)
  if (faults.length > 0) throw new Error(`${faults.length} told wrongly:\n${faults.join('\n')}`)
  const untold = namedOfPorkLoin(seed)
  if (untold.length > 0) throw new Error(`Not told what is true: ${untold.join(' ')}`)
  const few = CHECKABLE.filter((kind) => (tried[kind] ?? 0) < EACH)
  if (few.length > 0) throw new Error(`Tried too seldom: ${few.join(', ')}`)
  return { plans, faults: 0, named: NAMED.length, ...tried }
}
