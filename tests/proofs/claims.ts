import { readFileSync } from 'node:fs'
import { buildCard, checkCard } from '../../lib/card/card'
import type { ClaimKind } from '../../lib/card/claim'
import { forecastCook } from '../../lib/model/forecast-cook'
import { toCookPlan } from '../../lib/plan/cook-plan'
import { parseShootText } from '../../lib/plan/parse'
import { LOGGED, tryFilmed } from '../unit/card/filmed-sayings'
import { chance } from '../unit/card/made-up-forecast'
import { randomLog } from '../unit/card/random-log'
import { randomPlan } from '../unit/card/random-plan'
import { CHECKABLE, tryKind } from '../unit/card/sayings'

const PLANS = 200
/** Each kind is tried at least this often; plans that have no such thing (no sear, no word of doneness far enough off) are passed by. */
const EACH = 50

interface Tried {
  plan: number
  log: number
  /** Of what the log knows: how far off the true ones were at most and the false ones at least, in what its rule allows. */
  trueUpTo: number
  falseFrom: number
  againstModel: number
}

/** Each kind of claim, once true and once false, over random plans with full ensembles, and over a filmed day of each. */
function tryAll(seed: number) {
  const tried = new Map<ClaimKind, Tried>(
    CHECKABLE.map((kind) => [kind, { plan: 0, log: 0, trueUpTo: 0, falseFrom: Number.POSITIVE_INFINITY, againstModel: 0 }]),
  )
  const faults: string[] = []
  let logs = 0
  for (let i = 0; i < PLANS; i++) {
    const random = chance(seed * 1000 + i)
    const { plan, cut } = randomPlan(random)
    const forecast = forecastCook(plan, { seed: seed + i })
    const card = { cook: 'hero', animal: cut.animal, boneShare: cut.boneShare, authority: 'US' }
    for (const [kind, sum] of tried) {
      const trial = tryKind(forecast, kind, card, random)
      if (trial.tried) sum.plan++
      faults.push(...trial.faults)
    }
    const filmed = randomLog(forecast, random)
    if (!filmed) continue
    logs++
    for (const kind of LOGGED) {
      const sum = tried.get(kind) as Tried
      const trial = tryFilmed(forecast, filmed, kind, card, random)
      faults.push(...trial.faults)
      if (!trial.tried) continue
      sum.log++
      sum.trueUpTo = Math.max(sum.trueUpTo, trial.trueUpTo)
      sum.falseFrom = Math.min(sum.falseFrom, trial.falseFrom)
      sum.againstModel += trial.againstModel
    }
  }
  return { logs, tried, faults }
}

const NAMED = ['It is safe for everybody at 52 °C.', 'It is edge to edge pink.', 'It takes an hour in all.']
/** The three sentences said of the pork loin; each must be contradicted and told what is true instead. */
function namedOfPorkLoin(seed: number): string[] {
  const read = parseShootText(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8'))
  if (!read.ok) throw new Error('The pork loin does not read.')
  const shoot = { ...read.value, card: { steps: NAMED.map((text, i) => ({ id: `named-${i}`, text })) } }
  const forecasts = new Map(shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed })]))
  const checked = checkCard(buildCard(shoot, forecasts), forecasts)
  return NAMED.filter(
    (text) => !checked.some((c) => c.sentence === text && c.finding === 'contradicted' && c.figure && c.trueSentence),
  )
}

const hundredths = (x: number) => Math.round(100 * x) / 100
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const { logs, tried, faults } = tryAll(seed)
  if (faults.length > 0) throw new Error(`${faults.length} told wrongly:\n${faults.join('\n')}`)
  const untold = namedOfPorkLoin(seed)
  if (untold.length > 0) throw new Error(`Not told what is true: ${untold.join(' ')}`)
  const few = CHECKABLE.filter((kind) => (tried.get(kind)?.plan ?? 0) < EACH)
  if (few.length > 0) throw new Error(`Tried too seldom: ${few.join(', ')}`)
  const figures: Record<string, number> = { plans: PLANS, logs, faults: 0, named: NAMED.length }
  for (const [kind, sum] of tried) {
    figures[kind] = sum.plan
    if (sum.log === 0) continue
    figures[`${kind} filmed`] = sum.log
    figures[`${kind} filmed, model alone otherwise`] = sum.againstModel
    if (sum.trueUpTo === 0) continue
    figures[`${kind} true up to`] = hundredths(sum.trueUpTo)
    figures[`${kind} false from`] = hundredths(sum.falseFrom)
  }
  return figures
}
