/** The safety ledger in words: what each printed rule asks, what this plan gives, and what may be said of it. */
import { probingSteps } from '../card/probing'
import type { Animal } from '../model/cuts'
import { type Dwell, isPoultry, TABLE_LOG, tableReach } from '../model/dwell-table'
import type { Forecast } from '../model/forecast'
import { consumerOven, type OvenCondition } from '../model/oven-minimums'
import type { LedgerRow } from '../model/safety-ledger'
import { safetyOf } from '../model/safety-summary'
import { SOURCES } from '../model/sources'
import { celsius, formatDuration, formatMass, formatTemp, kilograms, type UnitSystem } from '../units'
import {
  comeUpLine,
  coolingLine,
  growthLine,
  holdLine,
  leftOutLine,
  leftoversOf,
  ofRuns,
  range,
  type SafetyLine,
  sourceOf,
  type Telling,
  VERDICT,
} from './safety-times'

export interface SafetyPanel {
  /** What the likely cook comes to, in one sentence. */
  readonly lead: string
  /** Whose numbers these are, where no table is held for the plan's authority. */
  readonly whose: string | null
  readonly lines: readonly SafetyLine[]
  /** What to do with what is kept. */
  readonly leftovers: string | null
  readonly probing: readonly string[]
}

type OfAnimal = Telling & { readonly animal: Animal }

export function safetyPanel(f: Forecast, animal: Animal, authority: string, units: UnitSystem): SafetyPanel {
  const safety = safetyOf(f, authority)
  const t: OfAnimal = { f, animal, safety, units, temp: (c, digits = 0) => formatTemp(celsius(c), units, digits) }
  return {
    lead: leadOf(t),
    whose:
      authority === 'US'
        ? null
        : `We hold no table for ${authority}: these are the US authorities’ numbers. Ask the local food-safety authority, whose rules go first.`,
    lines: [
      ...safety.ledger.map((row) => heatLine(t, row)),
      comeUpLine(t, safety.comeUp),
      growthLine(t),
      ...(safety.hotHold ? [holdLine(t, safety.hotHold)] : []),
      ...(safety.cooling ? [coolingLine(t, safety.cooling)] : []),
      leftOutLine(t),
    ],
    leftovers: safety.cooling ? leftoversOf(units, safety.cooling) : null,
    probing: probingSteps(units),
  }
}

function leadOf({ animal, safety, temp }: OfAnimal): string {
  const { tempC, restMin } = safety.minimum
  const asked = restMin > 0 ? `${temp(tempC)}, then ${restMin} min` : temp(tempC)
  const met = `The food-safety authority’s minimum (${asked}) is met ${ofRuns(safety.metShare)}.`
  return tableReach(animal).reach === 'none' ? met : `${met} ${likelyCook(safety.dwellTable.sentence, temp)}`
}
const likelyCook = (sentence: string, temp: Telling['temp']) =>
  inUnits(sentence, temp).replace(/^It /, 'The likely cook ')
/** The model says levels in both systems; a screen shows the reader's. */
const inUnits = (sentence: string, temp: Telling['temp']) =>
  sentence.replace(/(−?[\d.]+) °C \/ −?[\d.]+ °F/g, (_, c: string) =>
    temp(Number(c.replace('−', '-')), c.includes('.') ? 1 : 0),
  )

const KIND: Partial<Record<Animal, string>> = { salmon: 'fish', venison: 'game' }
const RULE: Readonly<Record<LedgerRow['id'], (animal: Animal) => string>> = {
  'consumer-minimum': (a) => (isPoultry(a) ? 'consumers, poultry' : `consumers, ${KIND[a] ?? 'whole cuts'}`),
  'food-code-roast': () => 'restaurants, whole roasts',
  'food-code-pierced': () => 'restaurants, meat with its surface inside',
  'food-code-poultry': () => 'restaurants, poultry',
  'food-code-fish': () => 'restaurants, fish',
  'food-code-farmed-game': () => 'restaurants, farmed game',
  'food-code-wild-game': () => 'restaurants, wild game',
  'uk-throughout': () => 'meat with its surface inside',
  'dwell-table': () => 'Appendix A, cooked beef, 6.5 log',
  'dwell-table-7': () => 'Appendix A, cooked beef, 7 log',
}

function dwellWords({ tempC, heldS }: Dwell, temp: Telling['temp']): string {
  return heldS === 0 ? `${temp(tempC)} at once` : `${temp(tempC)} for ${formatDuration(heldS)}`
}
/** A long table by its ends and its 60 °C. */
function asksWords(asks: readonly Dwell[], temp: Telling['temp']): string {
  const [only] = asks
  if (asks.length === 1 && only) return only.heldS === 0 ? temp(only.tempC) : dwellWords(only, temp)
  const rows = asks.length <= 5 ? asks : asks.filter((row, i) => i === 0 || i === asks.length - 1 || is60(row))
  const words = rows.map((row) => dwellWords(row, temp))
  return `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`
}
const is60 = ({ tempC }: Dwell) => Math.abs(tempC - 60) < 0.1

function heatLine(t: OfAnimal, row: LedgerRow): SafetyLine {
  return {
    id: row.id,
    rule: `${row.whose}: ${RULE[row.id](t.animal)}`,
    asks: asksWords(row.asks, t.temp),
    gives: ofRuns(row.share),
    verdict: VERDICT[row.verdict],
    source: sourceOf(row.source),
    details: [...conditionWords(t, row), ...(row.id === 'dwell-table' ? tableWords(t) : [])],
  }
}

function conditionWords(t: OfAnimal, row: LedgerRow): string[] {
  const consumer = row.id === 'consumer-minimum' ? consumerOven(t.f.cook) : undefined
  return [
    ...(row.oven ? [ovenWords(t, row.oven)] : []),
    ...(consumer
      ? [
          `Consumers are told to roast in an oven at ${t.temp(consumer.leastC)} or hotter (${SOURCES[consumer.source].reference}); this plan roasts at ${t.temp(consumer.planC)}.`,
        ]
      : []),
    ...(row.id === 'food-code-roast' ? ['The rise after the oven counts toward the time.'] : []),
    ...(row.care.includes('other-animal') ? [tableReach(t.animal).why] : []),
    ...(row.care.includes('lowest-row')
      ? [`Kept only by its lowest row, ${t.temp(54.4, 1)}, which a later study did not confirm.`]
      : []),
    ...(row.id === 'food-code-pierced'
      ? ['Needles, blades, brine and rolling carry inside what lay on the surface, so every part must get the heat.']
      : []),
    ...(row.id === 'uk-throughout' ? ['British advice: rolled joints are not for serving rare.'] : []),
  ]
}

const OVEN: Readonly<Record<NonNullable<OvenCondition['oven']>, string>> = {
  'still-dry': 'a still dry oven',
  convection: 'a convection oven',
  'high-humidity': 'an oven full of steam',
}
const LARGE = kilograms(4.53592)
function ovenWords({ f, temp, units }: Telling, oven: OvenCondition): string {
  const size = `${f.cook.roast.mass < LARGE ? 'under' : 'from'} ${formatMass(LARGE, units)}${f.cook.roast.mass < LARGE ? '' : ' up'}`
  const asks = `For a roast ${size} the code wants ${OVEN[oven.oven ?? 'still-dry']} preheated to ${temp(oven.leastC)} or more`
  const read = oven.named ? '' : ' (it does not name this cooker, which is read as still and dry)'
  return `${asks}${read}; this plan roasts at ${temp(oven.planC)}: ${oven.kept ? 'kept' : 'not kept'}.`
}

function tableWords({ safety, temp }: Telling): string[] {
  const { lethalityLog, leastAt, dwellTable } = safety
  const log = (n: number) => Math.min(TABLE_LOG, n).toFixed(1)
  const comes =
    lethalityLog.low >= TABLE_LOG
      ? `${TABLE_LOG} log and more`
      : `${range(log(lethalityLog.low), log(lethalityLog.high))} of ${TABLE_LOG} log`
  const where = leastAt.likely < 0.05 ? 'at the coldest line' : 'off the coldest line'
  return [
    likelyCook(dwellTable.sentence, temp),
    `Added up over the whole cook the least point, ${where}, comes to ${comes}; only ${temp(54.4, 1)} to ${temp(70)} counts.`,
  ]
}
