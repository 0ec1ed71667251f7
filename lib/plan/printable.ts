/**
 * The characters that the printed fonts hold (latin and latin-ext subsets of Vollkorn and Sofia Sans), as code point
 * ranges; the line end is set, not printed. A test compares them with the font files; all else would print as an empty box.
 */
export const PRINTABLE: readonly (readonly [number, number])[] = [
  [0xa, 0xa],
  [0x20, 0x7e],
  [0xa0, 0x107],
  [0x10a, 0x113],
  [0x116, 0x11b],
  [0x11e, 0x123],
  [0x126, 0x127],
  [0x12a, 0x12b],
  [0x12e, 0x131],
  [0x136, 0x13e],
  [0x141, 0x148],
  [0x14a, 0x14d],
  [0x150, 0x15b],
  [0x15e, 0x167],
  [0x16a, 0x16b],
  [0x16e, 0x17e],
  [0x218, 0x21b],
  [0x1e80, 0x1e85],
  [0x1e9e, 0x1e9e],
  [0x1ef2, 0x1ef3],
  [0x2013, 0x2014],
  [0x2018, 0x201a],
  [0x201c, 0x201e],
  [0x2020, 0x2020],
  [0x2022, 0x2022],
  [0x2026, 0x2026],
  [0x2039, 0x203a],
  [0x2044, 0x2044],
  [0x20ac, 0x20ac],
  [0x2122, 0x2122],
  [0x2191, 0x2191],
  [0x2193, 0x2193],
  [0x2212, 0x2212],
]

/**
 * Fractions that the fonts have no letter for: they are set from their digits. With the fraction
 * slash (U+2044) the printer would lose it in text that is copied: "1⁄3" would be "13".
 */
const SET_FROM_DIGITS: Readonly<Record<string, string>> = {
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}
/** As it is set: "1⅓" with a gap, for its digits would run together. */
export const asSet = (text: string): string =>
  text.replace(
    /(\d?)([⅓⅔⅛⅜⅝⅞])/g,
    (_, before: string, one: string) => `${before && `${before}\u00a0`}${SET_FROM_DIGITS[one]}`,
  )

const holds = (point: number) => PRINTABLE.some(([from, to]) => point >= from && point <= to)

/** One sentence naming the first character that cannot be printed, or null where all can. */
export function unprintable(text: string): string | null {
  for (const character of text) {
    const point = character.codePointAt(0) ?? 0
    if (holds(point) || character in SET_FROM_DIGITS) continue
    const code = `U+${point.toString(16).toUpperCase().padStart(4, '0')}`
    const visible = !/[\p{C}\p{Z}\p{M}]/u.test(character)
    const named = visible ? `"${character}" (${code})` : `The character ${code}`
    return `${named} is not in the printed letters. Write it with Latin letters, digits and common signs.`
  }
  return null
}
