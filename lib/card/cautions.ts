import { cutById } from '../model/cuts'
import type { Forecast } from '../model/forecast'
import type { Shoot } from '../plan/shoot'
import { celsius, formatTempBoth } from '../units'
import { isPoultry, minimumFor, minimumWords } from './authority'
import { coldestPeak, meetsMinimum } from './check-safety'
import type { Caution } from './claim'

type Cook = Shoot['cooks'][number]
const SEAR_FLARES_C = 230

/** Where the middle stays below the authority's minimum, or meets it in the likely cook only. */
function belowMinimum(cook: Cook, forecast: Forecast): Caution[] {
  const animal = cutById(cook.roast.cut)?.animal
  if (!animal) return []
  const minimum = minimumFor(animal)
  const peak = coldestPeak(forecast)
  if (meetsMinimum(peak, minimum)) return []
  const kind = isPoultry(animal) ? 'poultry' : 'whole cuts'
  const at = formatTempBoth(celsius(Math.round(peak.likely)))
  const asked = `the food-safety authority’s minimum for ${kind} (${minimumWords(minimum)})`
  if (isPoultry(animal))
    return [
      {
        code: 'poultry-minimum',
        sentence: `At ${at} in the middle this is below ${asked}. Do not serve it: cook it on until the coldest part reads that.`,
      },
    ]
  return [
    {
      code: 'below-minimum',
      sentence: `Sliced at ${at} this is below ${asked}. Do not serve it so to children, the old, the pregnant or the ill.`,
    },
  ]
}

function atTheFire(cook: Cook): Caution[] {
  const charcoal = cook.cooker.kind.endsWith('charcoal')
  const sear = cook.stages.some((s) => s.do === 'sear' && s.at >= SEAR_FLARES_C)
  return [
    ...(charcoal
      ? [
          {
            code: 'carbon-monoxide',
            sentence: 'Charcoal outdoors only: it gives off carbon monoxide, also when it no longer flames.',
          },
          {
            code: 'choked-lid',
            sentence:
              'Open the lid of a choked fire a finger wide first, and stand back: air let in at once can flare.',
          },
        ]
      : []),
    ...(sear
      ? [{ code: 'fat-flare', sentence: 'Hot fat flares at the sear: sleeves back, lid at hand, no water on it.' }]
      : []),
    ...(charcoal
      ? [
          {
            code: 'ash',
            sentence: 'Ash keeps its heat for a day: leave it in the cooker or in a metal bin with a lid.',
          },
        ]
      : []),
  ]
}

const probed = (cook: Cook) => cook.stages.some((s) => s.do === 'roast' && s.probe)

/** The cautions that this shoot's cooks call for, the gravest first. Each stands where the hazard is and defers to who knows better. */
export function cautionsFor(shoot: Shoot, forecasts: ReadonlyMap<string, Forecast>): Caution[] {
  const all = shoot.cooks.flatMap((cook) => {
    const forecast = forecasts.get(cook.id)
    return [
      ...(forecast ? belowMinimum(cook, forecast) : []),
      ...atTheFire(cook),
      ...(probed(cook)
        ? [
            {
              code: 'probe-cross-contact',
              sentence: 'Wash the probe between raw and done: it carries what it touched.',
            },
          ]
        : []),
    ]
  })
  all.push({
    code: 'cooling',
    sentence: 'Chill what is left within 2 hours of slicing, in pieces no thicker than a hand.',
  })
  all.push({ code: 'defer', sentence: whoseNumbers(shoot.authority) })
  return all.filter((c, i) => all.findIndex((o) => o.sentence === c.sentence) === i)
}
const whoseNumbers = (authority: string | undefined) =>
  authority === undefined || authority === 'US'
    ? 'The minimum is the US authority’s (USDA FSIS); local codes and food-safety authorities go before this card.'
    : `We hold no table for ${authority}: the minimum is the US authority’s (USDA FSIS); ask the local food-safety authority, whose rules go first.`
