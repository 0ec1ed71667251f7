import { toldThickness } from '../model/cooling-rules'
import { cutOf } from '../model/custom-cut'
import type { Animal } from '../model/cuts'
import { ALWAYS, isPoultry } from '../model/dwell-table'
import type { Forecast } from '../model/forecast'
import { minimumFor, surfaceInside } from '../model/minimums'
import { coolingOf, holdOf } from '../model/safety-summary'
import type { Shoot } from '../plan/shoot'
import { celsius, formatTempBoth, type Metres, metres } from '../units'
import type { Caution } from './claim'
import { coldestPeak, shareMeeting } from './coldest'
import { PROBE_CARE } from './probing'
import { lengthWords, minimumWords } from './wording'

type Cook = Shoot['cooks'][number]
const SEAR_FLARES_C = 230
const KIND: Partial<Record<Animal, string>> = { salmon: 'fish', venison: 'game' }
const kindOf = (animal: Animal) => (isPoultry(animal) ? 'poultry' : (KIND[animal] ?? 'whole cuts'))

/** Where the coldest point stays below the authority's minimum, in most cooks or in some: a caution unless 19 in 20 are past it. */
function belowMinimum(cook: Cook, forecast: Forecast): Caution[] {
  const cut = cutOf(cook.roast)
  if (!cut) return []
  const { animal } = cut
  const minimum = minimumFor({ animal })
  const short = 1 - shareMeeting(forecast, minimum)
  if (short <= 1 - ALWAYS) return []
  const asked = `the food-safety authority’s minimum for ${kindOf(animal)} (${minimumWords(minimum)})`
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
  const guests = 'children, the old, the pregnant or the ill.'
  const advice = low ? `Do not serve it so to ${guests}` : `Try several places before serving ${guests}`
  const inside = surfaceInside(cut, cook.roast.pierced)
    ? ' Rolled or pierced, it has inside what lay on its surface: rare is for nobody.'
    : ''
  return [{ code: 'below-minimum', sentence: `${found} ${advice}${inside}` }]
}
/** A hold is judged by the code's limit on food held hot, and by nothing else. */
function heldTooCool(cook: Cook, forecast: Forecast): Caution[] {
  const animal = cutOf(cook.roast)?.animal
  const hold = animal && cook.stages.some((s) => s.do === 'hold') ? holdOf(forecast, animal) : undefined
  if (!hold || hold.keptShare >= ALWAYS) return []
  const [coldest, least] = [hold.coldest.likely, hold.leastC].map((c) => formatTempBoth(celsius(Math.round(c))))
  return [
    {
      code: 'hold-too-cool',
      sentence: `Held, it comes down to about ${coldest}; the Food Code asks for ${least} of a roast held hot. Hold it warmer, or slice it sooner.`,
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
      ...(forecast ? [...belowMinimum(cook, forecast), ...heldTooCool(cook, forecast)] : []),
      ...atTheFire(cook),
      ...(probed(cook) ? [{ code: 'probe-cross-contact', sentence: PROBE_CARE }] : []),
    ]
  })
  all.push({ code: 'cooling', sentence: chill(shoot, forecasts) })
  all.push({ code: 'defer', sentence: whoseNumbers(shoot.authority) })
  return all.filter((c, i) => all.findIndex((o) => o.sentence === c.sentence) === i)
}

/** Pieces that keep the two-step rule, the thinnest that any of the cooks asks for. */
function chill(shoot: Shoot, forecasts: ReadonlyMap<string, Forecast>): string {
  const greatest = (chillId: 'fridge' | 'ice-bath') =>
    shoot.cooks.reduce<Metres | undefined>((least, cook) => {
      const [forecast, cut] = [forecasts.get(cook.id), cutOf(cook.roast)]
      const thick = forecast && cut && coolingOf(forecast, cut)?.greatest.find((g) => g.chill === chillId)?.thickness
      return thick ? metres(Math.min(thick, least ?? Number.POSITIVE_INFINITY)) : least
    }, undefined)
  const [fridge, ice] = [greatest('fridge'), greatest('ice-bath')]
  if (!fridge || !ice) return 'Chill what is left within 2 hours of slicing, in thin slices.'
  const words = (m: Metres) => lengthWords(toldThickness(m))
  return `Chill what is left within 2 hours of slicing: one layer of slices up to ${words(fridge)} in a fridge, bagged pieces up to ${words(ice)} in iced water.`
}

const whoseNumbers = (authority: string | undefined) =>
  authority === undefined || authority === 'US'
    ? 'The minimum is the US authority’s (USDA FSIS); local codes and food-safety authorities go before this card.'
    : `We hold no table for ${authority}: the minimum is the US authority’s (USDA FSIS); ask the local food-safety authority, whose rules go first.`
