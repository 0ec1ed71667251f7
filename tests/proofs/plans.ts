import fc from 'fast-check'
import type { CookPlan } from '../../lib/model/cook'
import { forecastCook } from '../../lib/model/forecast-cook'
import { anyPlan } from '../laws/cooks'
import { comparisonFaults, forecastFaults } from '../laws/plan-faults'

const PLANS = 10_000
const MEMBERS = 8
/** Every so many plans are also run heavier and hotter. */
const COMPARED = 10
const HANG_MS = 1000

/** Ten thousand random plans: no number missing, no member out of order, none slower than a second. */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  // roasts of one shape follow each other, so that each is calibrated once
  const shapeOf = ({ roast }: CookPlan) => `${roast.cut} ${roast.mass}`
  const plans = fc.sample(anyPlan, { numRuns: PLANS, seed }).sort((a, b) => shapeOf(a).localeCompare(shapeOf(b)))
  const faults: string[] = []
  let worstMs = 0
  let compared = 0
  plans.forEach((plan, i) => {
    const started = process.cpuUsage()
    const forecast = forecastCook(plan, { seed: seed + i, members: MEMBERS, kernel: 'simd' })
    const { user, system } = process.cpuUsage(started)
    worstMs = Math.max(worstMs, (user + system) / 1000)
    const found = forecastFaults(forecast)
    if (i % COMPARED === 0) found.push(...comparisonFaults(plan))
    if (i % COMPARED === 0) compared++
    if (found.length > 0) faults.push(`plan ${i}, ${JSON.stringify(plan)}: ${found.slice(0, 2).join('; ')}`)
  })
  if (faults.length > 0) throw new Error(`${faults.length} plans break a law:\n${faults.slice(0, 20).join('\n')}`)
  if (worstMs > HANG_MS) throw new Error(`The slowest plan took ${Math.round(worstMs)} ms.`)
  return { plans: PLANS, membersEach: MEMBERS, compared, faults: 0, worstMs: Math.round(worstMs) }
}
