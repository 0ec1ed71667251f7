import { checkLayout } from '../../lib/day/check'
import { layOutDay } from '../../lib/day/lay-out'
import type { Layout } from '../../lib/day/layout'
import type { Shoot } from '../../lib/plan/shoot'
import { anyDay } from '../unit/day/any-day'

const DAYS = 1000
const SWEEPS = 3

/** A thousand days nobody planned, overnight, over clock changes, without sunset, for one person: not one breaks a rule. */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const broken: string[] = []
  const kinds: Record<string, number> = { overnight: 0, clock_change: 0, no_sunset_or_no_sunrise: 0, one_person: 0 }
  for (let day = seed * DAYS; day < (seed + 1) * DAYS; day++) {
    const { shoot, forecasts } = anyDay(day)
    const layout = layOutDay(shoot, forecasts, { seed: day, sweeps: SWEEPS })
    for (const v of checkLayout(shoot, layout, forecasts)) broken.push(`${day}: ${v.rule}: ${v.sentence}`)
    for (const kind of kindsOf(shoot, layout)) kinds[kind] = (kinds[kind] ?? 0) + 1
  }
  if (broken.length > 0) throw new Error(`${broken.length} rules broken:\n${broken.slice(0, 20).join('\n')}`)
  return { days: DAYS, violations: 0, ...kinds }
}

function kindsOf(shoot: Shoot, { crewCall, wrap }: Layout): string[] {
  const is = {
    overnight: crewCall.slice(0, 10) !== wrap.slice(0, 10),
    clock_change: crewCall.slice(-6) !== wrap.slice(-6),
    // North of the circle, at midsummer and midwinter.
    no_sunset_or_no_sunrise: shoot.place.lat > 66.6,
    one_person: shoot.people?.length === 1,
  }
  return Object.entries(is).flatMap(([kind, so]) => (so ? [kind] : []))
}
