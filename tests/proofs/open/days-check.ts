import { checkLayout } from '../../../lib/day/check'
import { layOutDay } from '../../../lib/day/lay-out'
import { anyDay } from '../../unit/day/any-day'

const DAYS = 1000
const SWEEPS = 3

/** A thousand days nobody planned, overnight, over clock changes, without sunset, for one person: not one breaks a rule. */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const broken: string[] = []
  for (let day = seed * DAYS; day < (seed + 1) * DAYS; day++) {
    const { shoot, forecasts } = anyDay(day)
    const layout = layOutDay(shoot, forecasts, { seed: day, sweeps: SWEEPS })
    for (const v of checkLayout(shoot, layout, forecasts)) broken.push(`${day}: ${v.rule}: ${v.sentence}`)
  }
  if (broken.length > 0) throw new Error(`${broken.length} rules broken:\n${broken.slice(0, 20).join('\n')}`)
  return { days: DAYS, violations: 0 }
}
