/**
 * The characters that the printed fonts hold (latin and latin-ext subsets of Vollkorn and Sofia Sans), as code point
 * ranges. A test compares them with the font files; all else would print as an empty box.
 */
const PRINTABLE: readonly (readonly [number, number])[] = [
  [0x0a, 0x0a],
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x2013, 0x2014],
  [0x2018, 0x201a],
  [0x201c, 0x201e],
  [0x2020, 0x2022],
  [0x2026, 0x2026],
  [0x2039, 0x203a],
  [0x20ac, 0x20ac],
  [0x2122, 0x2122],
  [0x2212, 0x2212],
]

const holds = (point: number) => PRINTABLE.some(([from, to]) => point >= from && point <= to)

/** One sentence naming the first character that cannot be printed, or null where all can. */
export function unprintable(text: string): string | null {
  for (const character of text.normalize('NFC')) {
    const point = character.codePointAt(0) ?? 0
    if (holds(point)) continue
    const code = `U+${point.toString(16).toUpperCase().padStart(4, '0')}`
    const visible = point > 0x20 && !(point >= 0x7f && point < 0xa0) && !(point >= 0xd800 && point <= 0xdfff)
    const named = visible ? `"${character}" (${code})` : `The character ${code}`
    return `${named} is not in the printed letters. Write it with Latin letters, digits and common signs.`
  }
  return null
}
