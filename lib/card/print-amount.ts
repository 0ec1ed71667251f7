import { G_PER_OZ, ML_PER } from './kitchen-measures'
import type { Span } from './read-amount'

/** Amounts as a cook measures them. What is greater than nothing never prints as nothing. */

const PARTS: readonly (readonly [number, string])[] = [
  [0, ''],
  [1 / 8, '⅛'],
  [1 / 4, '¼'],
  [1 / 3, '⅓'],
  [3 / 8, '⅜'],
  [1 / 2, '½'],
  [5 / 8, '⅝'],
  [2 / 3, '⅔'],
  [3 / 4, '¾'],
  [7 / 8, '⅞'],
]
/** "1½": the number as whole and fraction; what is not near one of them is written with a point. */
function mixed(n: number): string {
  const whole = Math.floor(n + 1e-6)
  const part = PARTS.find(([value]) => Math.abs(n - whole - value) < 1e-6)
  if (!part) return String(Number(n.toFixed(2)))
  return whole === 0 ? part[1] : `${whole}${part[1]}`
}
const inSteps = (n: number, step: number) => Math.max(step, Math.round(n / step) * step)
const plain = (n: number) => String(Number(n.toFixed(2)))

/** To 1 g below 20 g, to 5 g below a kilogram, then to 50 g. */
export function gramWords(grams: number): string {
  if (grams < 0.95) return `${plain(inSteps(grams, 0.1))} g`
  if (grams < 19.5) return `${Math.round(grams)} g`
  return grams < 997.5 ? `${inSteps(grams, 5)} g` : `${plain(inSteps(grams / 1000, 0.05))} kg`
}
/** To half a millilitre below 5, to 1 below 20, to 5 below 100, to 10 below a litre, then to 50. */
export function mlWords(ml: number): string {
  if (ml >= 995) return `${plain(inSteps(ml / 1000, 0.05))} l`
  const step = ml < 4.75 ? 0.5 : ml < 19.5 ? 1 : ml < 97.5 ? 5 : 10
  return `${plain(inSteps(ml, step))} ml`
}
/** Ounces to the eighth below one, to the quarter below a pound, then pounds and ounces. */
export function ounceWords(grams: number): string {
  const oz = grams / G_PER_OZ
  if (oz < 1 / 16) return 'less than ⅛ oz'
  if (oz < 15.875) return `${mixed(inSteps(oz, oz < 0.9375 ? 1 / 8 : 1 / 4))} oz`
  const whole = Math.round(oz)
  return whole % 16 === 0 ? `${whole / 16} lb` : `${Math.floor(whole / 16)} lb ${whole % 16} oz`
}

type Measure = keyof typeof ML_PER
const rungs = (measure: Measure, ...numbers: number[]) => numbers.map((n) => [n, measure] as const)
/** What spoons and cups there are; some are fitted together, as 1 and ¼. */
const LADDER = [
  ...rungs('tsp', 1 / 8, 1 / 4, 1 / 2, 3 / 4, 1, 1.25, 1.5, 1.75, 2, 2.5),
  ...rungs('tbsp', 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5),
  ...rungs('cup', 1 / 4),
  ...rungs('tbsp', 5),
  ...rungs('cup', 1 / 3),
  ...rungs('tbsp', 6, 7),
  ...rungs('cup', 1 / 2, 5 / 8, 2 / 3, 3 / 4, 7 / 8, 1, 1.25, 4 / 3, 1.5, 5 / 3, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.5, 4),
]
/** Spoons and cups; the nearest there is, by the share it is off. */
export function spoonWords(ml: number): string {
  if (ml < ML_PER.tsp / 12) return 'a pinch'
  const off = ([n, measure]: (typeof LADDER)[number]) => Math.abs(Math.log((n * ML_PER[measure]) / ml))
  const near = LADDER.reduce((best, rung) => (off(rung) < off(best) ? rung : best))
  const [n, measure] = ml > 4.25 * ML_PER.cup ? ([inSteps(ml / ML_PER.cup, 0.5), 'cup'] as const) : near
  return `${mixed(n)} ${measure}${measure === 'cup' && n > 1 ? 's' : ''}`
}

/** "1 to 2 tbsp"; a span that rounds to one amount is that. */
export function spanWords({ low, high }: Span, words: (n: number) => string): string {
  const [from, to] = [words(low), words(high)]
  if (from === to) return to
  const unit = to.match(/ ([^ ]+)$/)?.[1] ?? ''
  const short = from.endsWith(` ${unit}`) ? from.slice(0, -unit.length - 1) : from
  return `${short} to ${to}`
}
