import { cutOf } from '../model/custom-cut'
import { isPoultry } from '../model/dwell-table'
import { minimumFor } from '../model/minimums'
import { celsius, formatDuration, formatTemp, minutes, type UnitSystem } from '../units'
import type { RiskInput, RiskLine, WhoOf } from './risk-sheet'

/** From raw meat to what is left over. The figures are the authority's, by way of the safety model. */
export function foodRisks({ shoot, units }: RiskInput, who: WhoOf): RiskLine[] {
  const hands = who('stylist', 'second-cook', 'cook', 'presenter')
  return [
    {
      hazard: 'Raw meat',
      does: 'Own board, own knife, hands washed after it and before a camera is touched. The probe is washed between raw and done.',
      who: hands,
    },
    { hazard: 'Eating what was cooked', does: minimumWords(shoot.cooks, units), who: who('cook', 'presenter') },
    {
      hazard: 'Food that stands',
      does: 'Not out for more than 2 hours, 1 hour above 32 °C / 90 °F; what was styled, handled or breathed on for takes is not served. What is left is chilled in pieces no thicker than a hand.',
      who: hands,
    },
    {
      hazard: 'Allergens',
      does: shoot.callSheet?.allergens
        ? `On set: ${shoot.callSheet.allergens}. Everybody is told before they taste; the crew’s own allergies are asked for.`
        : 'What is on set is written on the call sheet; everybody is told before they taste, and the crew’s own allergies are asked for.',
      who: hands,
    },
    {
      hazard: 'Knives',
      does: 'Sharp, carried point down, laid flat; nobody reaches into the frame while the blade moves.',
      who: who('presenter', 'cook'),
    },
  ]
}

function minimumWords(cooks: RiskInput['shoot']['cooks'], units: UnitSystem): string {
  const minima = cooks.flatMap(({ roast }) => {
    const animal = cutOf(roast)?.animal
    if (!animal) return []
    const { tempC, restMin } = minimumFor({ animal })
    const rest = restMin > 0 ? ` and ${formatDuration(minutes(restMin))} of rest` : ''
    return [`${formatTemp(celsius(tempC), units)}${rest} for ${isPoultry(animal) ? 'poultry' : animal}`]
  })
  const told = [...new Set(minima)].join('; ')
  return `Served only as far as the authority’s minimum was read in several places${told ? ` (${told})` : ''}; what stayed below is for the camera, or eaten by grown people who know it.`
}
