import type { CookPlan, Stage } from '../../../lib/model/cook'
import { CUTS, type Cut } from '../../../lib/model/cuts'
import { celsius, frac, kilograms, metres, metresPerSecond, minutes } from '../../../lib/units'

/** A plan that a cook might write: any roast of the catalogue but fish, oven or fire, seared or not, turned at half or by the clock. */
export function randomPlan(random: () => number): { plan: CookPlan; cut: Cut } {
  const between = (low: number, high: number) => low + random() * (high - low)
  const roasts = CUTS.filter((cut) => cut.animal !== 'salmon')
  const cut = roasts[Math.floor(random() * roasts.length)] as Cut
  const poultry = ['turkey', 'chicken', 'duck', 'goose'].includes(cut.animal)
  const fire = random() < 0.5
  const sear = !poultry && random() < 0.7
  const at = celsius(Math.round(between(120, 170)))
  const pull = Math.round(poultry ? 74 : between(44, 62))
  const stages: Stage[] = [
    { do: 'preheat', at },
    {
      do: 'roast',
      at,
      until: { core: celsius(pull) },
      turn: random() < 0.5 ? { at: 'half' } : { after: minutes(Math.round(between(20, 60))) },
      probe: { at: random() < 0.5 ? 'start' : 'turn' },
    },
    ...(sear
      ? [{ do: 'sear' as const, at: celsius(Math.round(between(230, 300))), until: { core: celsius(pull + 5) } }]
      : []),
    { do: 'rest', until: { after: minutes(Math.round(between(8, 30))) }, max: minutes(45) },
  ]
  const plan: CookPlan = {
    id: 'hero',
    roast: {
      cut: cut.id,
      mass: kilograms(cut.atMassKg * between(0.8, 1.25)),
      start: celsius(Math.round(between(2, 10))),
    },
    cooker: { kind: fire ? 'kettle-charcoal' : 'oven' },
    stages,
    surroundings: { air: celsius(15), wind: metresPerSecond(2), humidity: frac(0.6), altitude: metres(0) },
    lidOpenings: [],
  }
  return { plan, cut }
}
