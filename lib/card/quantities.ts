import { fromFahrenheit, readQuantity } from '../units'
import { between, hedgeAfter, hedgeBefore } from './hedges'
import { andAPart, numberAt, type Read } from './numbers'
import { DAY_S, gasMarkAt, said, spokenHours, spokenRatio, spokenShare } from './spoken'
import type { Token } from './tokens'

export type Measure =
  | 'temperature'
  | 'duration'
  | 'share'
  | 'mass'
  | 'length'
  | 'amount'
  | 'clock'
  | 'count'
  | 'degrees'
  /** How many times as long. */
  | 'ratio'

/** A number of a sentence with what it measures, SI, and the tokens it takes up. */
export interface Quantity {
  readonly measure: Measure
  readonly low: number
  readonly high: number
  /** The same as a difference, K; for temperatures only. */
  readonly lowK: number
  readonly highK: number
  readonly from: number
  readonly to: number
  readonly hedge: 'none' | 'about' | 'at-least' | 'at-most'
}

interface Unit {
  readonly measure: Measure
  readonly toSi: (n: number) => number
  readonly toK: (n: number) => number
  readonly next: number
}
const asIs = (n: number) => n
const unit = (measure: Measure, next: number, toSi = asIs, toK = asIs): Unit => ({ measure, toSi, toK, next })
const toCelsius = (f: number) => fromFahrenheit(f)
const KELVINS_PER_F = 1 / 1.8
const inSi = (word: string, dimension: 'mass' | 'length') => {
  const one = readQuantity(`1 ${word}`, dimension)
  return one.ok ? one.si : Number.NaN
}

const HOUR = /^(h|hr|hrs|hours?)$/
const MINUTE = /^(m|mins?|minutes?)$/
const SECOND = /^(s|secs?|seconds?)$/
/** A month of the calendar, on average. */
const LONG: Record<string, number> = { day: DAY_S, days: DAY_S, night: DAY_S, nights: DAY_S }
Object.assign(LONG, { week: 7 * DAY_S, weeks: 7 * DAY_S, month: 30.44 * DAY_S, months: 30.44 * DAY_S })
const MASS: Record<string, string> = { kg: 'kg', kilo: 'kg', kilos: 'kg', g: 'g', grams: 'g', gram: 'g' }
Object.assign(MASS, { lb: 'lb', lbs: 'lb', pound: 'lb', pounds: 'lb', oz: 'oz', ounce: 'oz', ounces: 'oz' })
const LENGTH: Record<string, string> = { mm: 'mm', cm: 'cm', millimetres: 'mm', millimeters: 'mm', centimetre: 'cm' }
Object.assign(LENGTH, { centimetres: 'cm', centimeter: 'cm', centimeters: 'cm', inch: 'in', inches: 'in' })
const AMOUNT = /^(ml|l|litres?|liters?|tsp|tbsp|teaspoons?|tablespoons?|cups?|cloves?|sprigs?|times?)$/

function temperatureUnit(tokens: readonly Token[], i: number): Unit | null {
  const [a, b] = [tokens[i]?.text, tokens[i + 1]?.text]
  const marked = a === '°' || a === 'degrees' || a === 'degree' || a === 'deg'
  const scale = marked ? b : a
  const next = i + (marked ? 2 : 1)
  if (scale === 'c' || scale === 'celsius' || scale === 'centigrade') return unit('temperature', next)
  if (scale === 'f' || scale === 'fahrenheit') return unit('temperature', next, toCelsius, (n) => n * KELVINS_PER_F)
  return marked ? unit('degrees', i + 1) : null
}

function unitAt(tokens: readonly Token[], i: number): Unit | null {
  const text = tokens[i]?.text ?? ''
  const temperature = temperatureUnit(tokens, i)
  if (temperature) return temperature
  if (HOUR.test(text)) return unit('duration', i + 1, (n) => n * 3600)
  if (MINUTE.test(text)) return unit('duration', i + 1, (n) => n * 60)
  if (SECOND.test(text)) return unit('duration', i + 1)
  const long = LONG[text]
  if (long) return unit('duration', i + 1, (n) => n * long)
  const mass = MASS[text]
  if (mass) return unit('mass', i + 1, (n) => n * inSi(mass, 'mass'))
  const length =
    LENGTH[text] ?? (text === 'in' && /^(thick|across|deep|\/|\))$/.test(tokens[i + 1]?.text ?? '') ? 'in' : '')
  if (length) return unit('length', i + 1, (n) => n * inSi(length, 'length'))
  const cent = text === '%' || text === 'percent' ? i + 1 : text === 'per' && tokens[i + 1]?.text === 'cent' ? i + 2 : 0
  if (cent && tokens[cent]?.text === 'longer') return unit('ratio', cent + 1, (n) => 1 + n / 100)
  if (cent) return unit('share', cent, (n) => n / 100)
  if (text === 'times' && said(tokens, i + 1, 2) === 'as long') return unit('ratio', i + 3)
  return AMOUNT.test(text) ? unit('amount', i + 1) : null
}

/** What follows hours: "1 h 40", "2 hours and 10 minutes", "2h05". */
function minutesAfter(tokens: readonly Token[], i: number): Read {
  const start = tokens[i]?.text === 'and' ? i + 1 : i
  const digits = tokens[start]?.text ?? ''
  const named = MINUTE.test(tokens[start + 1]?.text ?? '')
  if (!/^\d{1,2}$/.test(digits) || Number(digits) > 59 || (!named && start !== i)) return { value: 0, next: i }
  // "2 h 40" but not "2 h 40 °C" nor "1 h 8 people".
  if (!named && (digits.length < 2 || unitAt(tokens, start + 1))) return { value: 0, next: i }
  return { value: Number(digits) * 60, next: start + (named ? 2 : 1) }
}

interface Single {
  readonly measure: Measure
  readonly si: number
  readonly k: number
  readonly raw: number
  readonly next: number
}
const single = (measure: Measure, si: number, next: number, k = si, raw = si): Single => ({ measure, si, k, raw, next })

function clockAt(tokens: readonly Token[], i: number): Single | null {
  const [h, colon, m] = [tokens[i]?.text ?? '', tokens[i + 1]?.text, tokens[i + 2]?.text ?? '']
  if (!/^\d{1,2}$/.test(h) || colon !== ':' || !/^\d{2}$/.test(m)) return null
  const s = Number(h) * 3600 + Number(m) * 60
  return HOUR.test(tokens[i + 3]?.text ?? '') ? single('duration', s, i + 4) : single('clock', s, i + 3)
}

/** One quantity without a range; a number without a unit is a count. */
function singleAt(tokens: readonly Token[], i: number): Single | null {
  const clock = clockAt(tokens, i)
  if (clock) return clock
  const spoken = spokenHours(tokens, i)
  if (spoken) return single('duration', spoken.value, spoken.next)
  const share = spokenShare(tokens, i)
  if (share) return single('share', share.value, share.next)
  const ratio = spokenRatio(tokens, i)
  if (ratio) return single('ratio', ratio.value, ratio.next)
  const gas = gasMarkAt(tokens, i)
  if (gas) return single('temperature', toCelsius(gas.value), gas.next, gas.value * KELVINS_PER_F, gas.value)
  const number = numberAt(tokens, i)
  if (!number) return null
  const dash = tokens[number.next]?.text === '-' && unitAt(tokens, number.next + 1) ? number.next + 1 : number.next
  const found = unitAt(tokens, dash)
  if (!found) return single('count', number.value, number.next)
  const si = found.toSi(number.value)
  const isHours = found.measure === 'duration' && HOUR.test(tokens[dash]?.text ?? '')
  const minutes = isHours ? minutesAfter(tokens, found.next) : { value: 0, next: found.next }
  const part = isHours ? andAPart(tokens, minutes.next) : { value: 0, next: minutes.next }
  return single(found.measure, si + minutes.value + part.value * 3600, part.next, found.toK(number.value), number.value)
}

const TO = /^(to|-|–|—|or)$/
/** The far end of a range, and the near end again where only the far end carries the unit ("20 to 25 minutes"). */
function rangeFrom(tokens: readonly Token[], i: number, near: Single): { near: Single; far: Single } | null {
  const both = between(tokens, i) && tokens[near.next]?.text === 'and'
  if (!both && !TO.test(tokens[near.next]?.text ?? '')) return null
  const far = singleAt(tokens, near.next + 1)
  if (!far) return null
  if (far.measure === near.measure && near.measure !== 'clock') return { near, far }
  const number = near.measure === 'count' ? numberAt(tokens, near.next + 1) : null
  const shared = number ? unitAt(tokens, number.next) : null
  if (!shared || shared.measure !== far.measure) return null
  return { near: single(far.measure, shared.toSi(near.raw), near.next, shared.toK(near.raw), near.raw), far }
}

function quantityAt(tokens: readonly Token[], i: number): Quantity | null {
  const near = singleAt(tokens, i)
  if (!near) return null
  const range = rangeFrom(tokens, i, near)
  const [a, b] = range ? [range.near, range.far] : [near, near]
  const { hedge: before, from } = hedgeBefore(tokens, i)
  const after = before === 'none' ? hedgeAfter(tokens, b.next) : null
  const hedge = after?.hedge ?? before
  return {
    measure: b.measure,
    low: Math.min(a.si, b.si),
    high: Math.max(a.si, b.si),
    lowK: Math.min(a.k, b.k),
    highK: Math.max(a.k, b.k),
    from: between(tokens, from) ? from - 1 : from,
    to: after?.to ?? b.next,
    hedge: range && hedge !== 'about' ? 'none' : hedge,
  }
}

/** Every number of a sentence, from left to right, in figures or words, metric or US. */
export function quantitiesIn(tokens: readonly Token[]): Quantity[] {
  const found: Quantity[] = []
  for (let i = 0; i < tokens.length; ) {
    const quantity = quantityAt(tokens, i)
    if (quantity) found.push(quantity)
    i = quantity ? quantity.to : i + 1
  }
  return mergeTwins(tokens, found)
}

/** "150 °C / 302 °F" is one claim said twice, if both agree to the rounding; if not, each stands for itself. */
function saysTheSame(a: Quantity, b: Quantity): boolean {
  if (a.measure === 'mass' || a.measure === 'length')
    return agree(a.low, b.low, a.high * 0.05) && agree(a.high, b.high, a.high * 0.05)
  if (a.measure !== 'temperature') return false
  const slack = Math.max(0.6, 0.02 * a.high)
  if (agree(a.low, b.low, slack) && agree(a.high, b.high, slack)) return true
  // A rise: "5 to 6 °C / 8 to 10 °F".
  return a.highK < 30 && agree(a.lowK, b.lowK, 0.8) && agree(a.highK, b.highK, 0.8)
}
const agree = (a: number, b: number, slack: number) => Math.abs(a - b) <= slack

function mergeTwins(tokens: readonly Token[], all: readonly Quantity[]): Quantity[] {
  const merged: Quantity[] = []
  for (const q of all) {
    const last = merged.at(-1)
    const joined =
      last?.measure === q.measure && /^(\/|\(|or)$/.test(tokens[last.to]?.text ?? '') && q.from === last.to + 1
    if (last && joined && saysTheSame(last, q))
      merged[merged.length - 1] = { ...last, to: q.to + (tokens[q.to]?.text === ')' ? 1 : 0) }
    else merged.push(q)
  }
  return merged
}
