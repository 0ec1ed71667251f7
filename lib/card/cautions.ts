import { cutOf } from '../model/custom-cut'
import { isPoultry } from '../model/dwell-table'
import type { Forecast } from '../model/forecast'
import { minimumFor } from '../model/minimums'
import type { Shoot } from '../plan/shoot'
import { celsius, formatTempBoth } from '../units'
import type { Caution } from './claim'
import { coldestPeak, shareMeeting } from './coldest'
import { minimumWords } from './wording'

type Cook = Shoot['cooks'][number]
const SEAR_FLARES_C = 230
/** A caution stands unless 19 cooks in 20 are past it. */
const MOST = 0.95

/** Where the coldest point stays below the authority's minimum, in most cooks or in some. */
function belowMinimum(cook: Cook, forecast: Forecast): Caution[] {
  const animal = cutOf(cook.roast)?.animal
  if (!animal) return []
  const minimum = minimumFor({ animal })
  const short = 1 - shareMeeting(forecast, minimum)
  if (short <= 1 - MOST) return []
  const asked = `the food-safety authority’s minimum for ${isPoultry(animal) ? 'poultry' : 'whole cuts'} (${minimumWords(minimum)})`
  const peak = coldestPeak(forecast).likely
  const low = peak < minimum.tempC - 0.5
  const at = formatTempBoth(celsius(Math.round(peak)))
  const found = low
    ? `With ${at} at its coldest point when sliced this is below ${asked}.`
    : `In about ${oneIn(short)} cooks the coldest point is still below ${asked}.`
  if (isPoultry(animal))
    return [
      {
        code: 'poultry-minimum',
        sentence: `${found} Do not serve it before the coldest part reads that: try the thigh and the breast in several places.`,
      },
    ]
  if (low)
    return [
      { code: 'below-minimum', sentence: `${found} Do not serve it so to children, the old, the pregnant or the ill.` },
    ]
  return [
    {
      code: 'below-minimum',
      sentence: `${found} Try several places before serving children, the old, the pregnant or the ill.`,
    },
  ]
}
/** "2 in 10". */
const oneIn = (share: number) => `${Math.max(1, Math.round(share * 10))} in 10`

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
