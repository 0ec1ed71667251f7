/** Words of doneness and the temperatures that different people mean by them. */
import { fromFahrenheit } from '../units'
import type { Animal, Cut } from './cuts'
import type { SourceId } from './sources'

export const DONENESS_WORDS = ['rare', 'medium-rare', 'medium', 'medium-well', 'well-done'] as const
export type DonenessWord = (typeof DONENESS_WORDS)[number]

type Levels = Partial<Record<DonenessWord, readonly [number, number]>>
export interface DonenessScale {
  readonly source: SourceId
  /** Cooks speak of the temperature when sliced; authorities and researchers of the peak or of removal. */
  readonly kind: 'cooks' | 'authority'
  readonly levelsC: Levels
}
const f = (low: number, high = low): readonly [number, number] => [fromFahrenheit(low), fromFahrenheit(high)]
const c = (level: number): readonly [number, number] => [level, level]

/** The scales as printed, °F turned to °C. They disagree: "medium" is 60 °C in one and 71.1 °C in another. */
export const DONENESS_SCALES: readonly DonenessScale[] = [
  {
    source: 'culinary-school-doneness',
    kind: 'cooks',
    levelsC: {
      rare: f(115, 120),
      'medium-rare': f(125, 130),
      medium: f(140),
      'medium-well': f(150),
      'well-done': f(158),
    },
  },
  {
    source: 'culinary-school-doneness',
    kind: 'cooks',
    levelsC: { rare: f(130, 140), medium: f(140, 150), 'well-done': f(150, 165) },
  },
  {
    source: 'culinary-school-doneness',
    kind: 'cooks',
    levelsC: {
      rare: f(120, 125),
      'medium-rare': f(130, 135),
      medium: f(140, 145),
      'medium-well': f(150, 155),
      'well-done': f(160),
    },
  },
  {
    source: 'baldwin-roasting',
    kind: 'cooks',
    levelsC: { rare: c(50), 'medium-rare': c(55), medium: c(60), 'well-done': c(70) },
  },
  {
    source: 'amsa-photo-guide',
    kind: 'authority',
    levelsC: { rare: c(60), 'medium-rare': c(62.8), medium: c(71.1), 'well-done': c(76.7) },
  },
  {
    source: 'fsis-consumer-doneness',
    kind: 'authority',
    levelsC: { 'medium-rare': f(145), medium: f(160), 'well-done': f(170) },
  },
]

const RED: readonly Animal[] = ['beef', 'veal', 'venison', 'lamb']
/** The words that mean something for an animal: all five for red meat, from medium on for pork, none for poultry and fish. */
export const wordsFor = (animal: Animal): readonly DonenessWord[] =>
  RED.includes(animal) ? DONENESS_WORDS : animal === 'pork' ? DONENESS_WORDS.slice(2) : []

export interface DonenessRange {
  readonly word: DonenessWord
  /** What cooks mean, temperature of the middle when sliced: cut half way to the neighbouring words. */
  readonly fromC: number
  readonly toC: number
  /** Lowest and highest that any scale prints for the word. */
  readonly anyFromC: number
  readonly anyToC: number
}
const mean = (xs: readonly number[]) => xs.reduce((a, b) => a + b, 0) / xs.length
const levelsOf = (word: DonenessWord, scales: readonly DonenessScale[]) =>
  scales.flatMap((s) => (s.levelsC[word] ? [s.levelsC[word]] : []))
const COOKS = DONENESS_SCALES.filter((s) => s.kind === 'cooks')
const CENTRES = DONENESS_WORDS.map((word) => mean(levelsOf(word, COOKS).map(([low, high]) => (low + high) / 2)))

/** The five ranges, coldest first. Below the first the middle is called raw; the last has no upper end. */
export const DONENESS_RANGES: readonly DonenessRange[] = DONENESS_WORDS.map((word, i) => {
  const here = CENTRES[i] as number
  const all = levelsOf(word, DONENESS_SCALES).flat()
  const lowest = Math.min(...levelsOf(word, COOKS).flat())
  return {
    word,
    fromC: i === 0 ? lowest : ((CENTRES[i - 1] as number) + here) / 2,
    toC: i === CENTRES.length - 1 ? Number.POSITIVE_INFINITY : (here + (CENTRES[i + 1] as number)) / 2,
    anyFromC: Math.min(...all),
    anyToC: Math.max(...all),
  }
})

/** A cook's word for a middle at this temperature when sliced; undefined where none applies (raw, poultry, fish). */
export function donenessAt(cut: Pick<Cut, 'animal'>, tempC: number): DonenessWord | undefined {
  const range = DONENESS_RANGES.find((r) => tempC >= r.fromC && tempC < r.toC)
  return range && wordsFor(cut.animal).includes(range.word) ? range.word : undefined
}

const degrees = (x: number) => `${Math.round(x)} °C`
const rangeWords = ({ word, fromC, toC }: DonenessRange) =>
  Number.isFinite(toC)
    ? `${word} is about ${degrees(fromC)} to ${degrees(toC)} when sliced`
    : `${word} begins at about ${degrees(fromC)} when sliced`

/** A sentence where the wanted word and the temperature when sliced disagree; undefined where some scale agrees with both. */
export function donenessWarning(
  cut: Pick<Cut, 'animal' | 'name'>,
  wanted: DonenessWord,
  slicedC: number,
): string | undefined {
  if (wordsFor(cut.animal).length === 0)
    return `Words of doneness are for red meat; a ${cut.name} is done at the authority's minimum.`
  const range = DONENESS_RANGES.find((r) => r.word === wanted) as DonenessRange
  if (!wordsFor(cut.animal).includes(wanted))
    return `Nobody's scale has ${wanted} for ${cut.animal}; ${wordsFor(cut.animal)[0]} is its first word.`
  const low = Math.min(range.fromC, range.anyFromC)
  const high = Math.max(range.toC, range.anyToC)
  if (slicedC >= low - 0.5 && slicedC <= high + 0.5) return undefined
  const found = donenessAt(cut, slicedC)
  return `You want ${wanted}, but the middle will be about ${degrees(slicedC)} when sliced${found ? `, which cooks call ${found}` : ''}; ${rangeWords(range)}.`
}
