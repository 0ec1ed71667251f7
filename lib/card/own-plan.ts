import { cutOf, knownCutOf } from '../model/custom-cut'
import { donenessAt } from '../model/doneness'
import type { Forecast } from '../model/forecast'
import type { MomentId } from '../model/moment-ids'
import { spreadOf } from '../model/quantiles'
import { burnsSolidFuel, cookerName, momentName, shortName } from '../plan/moments'
import { checkRoast } from '../plan/roast-rules'
import type { Problem, Result } from '../refusals'
import { celsius, formatTempBoth, kilograms } from '../units'
import { cautionsFor } from './cautions'
import { coldestPeak } from './coldest'
import { between, stagesOf } from './figures'
import { howToKnow, type KnowRow } from './how-to-know'
import { pullOf } from './other-cook'
import { type ForecastOf, type OwnCook, ownCook } from './own-cook'
import { type CardBasis, cookOf, type Filled, readWish, type Wish } from './own-wish'
import { rulerWords } from './sizes'
import { aboutTime, levelWords, massWords, settingWords, timeWords } from './wording'

/** One line of the reader's own day. */
export interface OwnStep {
  readonly id: string
  readonly what: string
  /** "16:05", "16:45 to 17:40" or, without a time to serve at, how long after the meat goes on. */
  readonly when: string
  readonly know: string
}
/** The card's cook for the reader's own roast and cooker. */
export interface OwnPlan {
  /** "11 cm / 4¼ in thick, about 2.5 kg, in the oven." */
  readonly of: string
  /** The one thing to remember: what the probe reads when it comes off, and how long that takes. */
  readonly pull: string
  readonly says: readonly string[]
  readonly steps: readonly OwnStep[]
  readonly cautions: readonly string[]
}

/** Said on the card itself, whatever the roast. */
const ON_EVERY_CARD: readonly string[] = ['probe-cross-contact', 'cooling', 'defer']

const DAY_MIN = 1440
const CLOCK_GRAIN_MIN = 5
/** "19:30"; of the day before, so said. */
function clock(min: number): string {
  const inDay = ((min % DAY_MIN) + DAY_MIN) % DAY_MIN
  const time = `${String(Math.floor(inDay / 60)).padStart(2, '0')}:${String(Math.floor(inDay % 60)).padStart(2, '0')}`
  const before = Math.ceil(-min / DAY_MIN)
  return before <= 0 ? time : `${time} the day before`
}
const sooner = (min: number) => Math.floor(min / CLOCK_GRAIN_MIN) * CLOCK_GRAIN_MIN
const nearest = (min: number) => Math.round(min / CLOCK_GRAIN_MIN) * CLOCK_GRAIN_MIN

interface Day {
  readonly f: Forecast
  /** When the meat goes on, minutes after the midnight of the day it is served; null without a time to serve at. */
  readonly meatOnMin: number | null
}
/** The meat goes on so early that 19 cooks in 20 are ready to be sliced when it is served. */
function dayOf(f: Forecast, serveMin: number | null): Day {
  const late = spreadOf<number>(f.moments['first-slice'] ?? Float64Array.of(Number.POSITIVE_INFINITY)).high
  const known = serveMin !== null && Number.isFinite(late)
  return { f, meatOnMin: known ? sooner(serveMin - late / 60) : null }
}

function whenOf({ f, meatOnMin }: Day, id: MomentId): string {
  const samples = between(f, 'meat-on', id)
  if (!samples) return ''
  const { low, likely, high } = spreadOf<number>(samples)
  if (!Number.isFinite(likely)) return 'not in most cooks'
  if (id === 'fire-lit')
    return meatOnMin === null ? `about ${aboutTime(-low)} before` : clock(sooner(meatOnMin + low / 60))
  if (meatOnMin === null) return id === 'meat-on' ? 'once it is steady' : `after ${timeWords({ low, high })}`
  const [from, to] = [nearest(meatOnMin + low / 60), nearest(meatOnMin + high / 60)]
  if (id === 'meat-on' || from === to) return clock(nearest(meatOnMin + likely / 60))
  return Number.isFinite(to) ? `${clock(from)} to ${clock(to)}` : `${clock(from)} or later`
}

/** The lines of the day, each with the reading of the card's table that ends it. */
const LINES: readonly (readonly [MomentId, KnowRow['id'] | null])[] = [
  ['fire-lit', null],
  ['meat-on', 'steady'],
  ['turn', 'turn'],
  ['pull', 'pull'],
  ['sear-start', 'sear'],
  ['off-heat', 'off'],
  ['first-slice', 'rest'],
]
function stepsOf(day: Day, rows: readonly KnowRow[]): OwnStep[] {
  const { kind } = day.f.cook.cooker
  const names: Partial<Record<MomentId, string>> = {
    'fire-lit': burnsSolidFuel(kind) ? 'light the fire' : `switch on the ${shortName(kind)}`,
    pull: 'pull',
    'first-slice': 'slice',
  }
  return LINES.flatMap(([id, row]) => {
    const know = rows.find((each) => each.id === row)?.know ?? (id === 'fire-lit' ? settingFor(day.f) : '')
    const absent = day.f.moments[id] === undefined || (id === 'off-heat' && know === '')
    return absent ? [] : [{ id, what: names[id] ?? momentName(id, kind), when: whenOf(day, id), know }]
  })
}

const settingFor = (f: Forecast) => {
  const at = stagesOf(f, 'preheat').at(-1)?.at
  return at === undefined ? '' : `For a cooker at ${settingWords(at)}.`
}

function pullWords(f: Forecast): string {
  const taken = between(f, 'meat-on', 'pull')
  const time = taken && spreadOf<number>(taken)
  const level = formatTempBoth(pullOf(f))
  if (!time || !Number.isFinite(time.likely)) return `The probe does not come to ${level} in most cooks.`
  return `Pull it when the probe reads ${level}: likely ${aboutTime(time.likely)} after it goes on, ${timeWords(time)} in nine cooks of ten.`
}

function says(basis: CardBasis, wish: Wish, own: OwnCook, day: Day): string[] {
  const { forecast: f, met } = own
  const sliced = spreadOf<number>(f.atSlice.probeC)
  if (!Number.isFinite(sliced.likely)) return ['A hotter cooker, a cooler target or a thinner roast would get there.']
  const word = donenessAt(knownCutOf(cookOf(basis).roast), sliced.likely)
  const ready = spreadOf<number>(f.moments['first-slice'] ?? new Float64Array())
  const half = day.meatOnMin === null ? null : clock(nearest(day.meatOnMin + ready.likely / 60))
  const climb = coldestClimb(f)
  return [
    met ? '' : 'It cannot be brought nearer to what you ask for in this cooker.',
    `The middle comes to ${levelWords(sliced)} when sliced${word ? `, ${word.replace('-', ' ')} at the likeliest` : ''}.`,
    half
      ? `Half of such cooks can be sliced by ${half}, 19 in 20 by ${clock(wish.serveMin ?? 0)}. One that is ready sooner waits whole${climb}.`
      : '',
    wish.serveMin !== null && half === null
      ? 'No time to light can be told: too many of such cooks never get there.'
      : '',
  ].filter(Boolean)
}
function coldestClimb(f: Forecast): string {
  const [most, now] = [spreadOf<number>(f.peakCoreC).likely, coldestPeak(f).likely]
  return most - now >= 1 ? ` and climbs to about ${formatTempBoth(celsius(Math.round(most)))} at its coldest` : ''
}

/** The reader's own plan, or what is wrong at each field. */
export function ownPlan(basis: CardBasis, filled: Filled, forecastOf: ForecastOf): Result<OwnPlan> {
  const read = readWish(filled, basis)
  if (!read.ok) return read
  const wish = read.value
  const own = ownCook(basis, wish, forecastOf)
  const wrong = checkRoast(own.cook, '')
  if (wrong.length > 0) return { ok: false, problems: wrong.map(atField) }
  if (wish.goal.minimum && !own.met) return { ok: false, problems: [BELOW_MINIMUM] }
  return { ok: true, value: planOf(basis, wish, own) }
}
/** No plan at all: nobody should be shown times that end below what they asked to keep. */
const BELOW_MINIMUM: Problem = {
  pointer: '/cooker',
  sentence:
    'In this cooker such a roast does not come to the authority’s minimum in 19 cooks of 20. Choose a hotter cooker or a thinner roast.',
}
const atField = ({ sentence }: Problem): Problem => ({ pointer: '/thickness', sentence })

function planOf(basis: CardBasis, wish: Wish, own: OwnCook): OwnPlan {
  const { cook, forecast } = own
  const day = dayOf(forecast, wish.serveMin)
  const { animal } = knownCutOf(cook.roast)
  const card = { animal, authority: basis.shoot.authority ?? 'US' }
  const weight = wish.mass === null ? 'about ' : ''
  return {
    of: `${cutOf(cook.roast)?.name}, ${rulerWords(wish.thickness)} thick, ${weight}${massWords(kilograms(cook.roast.mass))}; ${cookerName(wish.cooker)}.`,
    pull: pullWords(forecast),
    says: says(basis, wish, own, day),
    steps: stepsOf(day, howToKnow(card, forecast)),
    cautions: cautionsFor({ ...basis.shoot, cooks: [cook] }, new Map([[cook.id, forecast]]))
      .filter(({ code }) => !ON_EVERY_CARD.includes(code))
      .map(({ sentence }) => sentence),
  }
}
