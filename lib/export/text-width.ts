import { ADVANCES, CHARACTERS } from './advance-widths'
import type { Face, TextMark, Weight } from './drawing'

const PLACES = new Map([...CHARACTERS].map((character, i) => [character, i]))
/** Letters outside the tables (another script's) are taken wide, so that they are given too much room, not too little. */
const UNKNOWN_EM = 0.65

/** Width of a line of words, in the unit of `size`. */
export function textWidth(words: string, lettering: { face: Face; weight: Weight; size: number }): number {
  const advances = ADVANCES[`${lettering.face}-${lettering.weight}`] ?? ADVANCES[`${lettering.face}-600`] ?? []
  let em = 0
  for (const character of words) {
    const advance = advances[PLACES.get(character) ?? -1]
    em += advance === undefined ? UNKNOWN_EM : advance / 1000
  }
  return em * lettering.size
}

export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}
/** The box of the letters: ascenders and a little below the baseline. */
export function textBox(mark: TextMark): Box {
  const width = textWidth(mark.text, mark)
  const left = mark.x - (mark.anchor === 'start' ? 0 : mark.anchor === 'end' ? width : width / 2)
  return { left, right: left + width, top: mark.y - mark.size * 0.72, bottom: mark.y + mark.size * 0.2 }
}
export const overlap = (a: Box, b: Box, air = 0) =>
  a.left < b.right + air && b.left < a.right + air && a.top < b.bottom + air && b.top < a.bottom + air
/** The longest beginning of the words, cut at a space, that fits; null where not even a useful one does. */
export function fitWords(words: string, room: number, lettering: { face: Face; weight: Weight; size: number }) {
  if (textWidth(words, lettering) <= room) return words
  const parts = words.split(' ')
  for (let n = parts.length - 1; n > 0; n--) {
    const shorter = `${parts
      .slice(0, n)
      .join(' ')
      .replace(/[,;:]$/, '')}…`
    if (shorter.length > 5 && textWidth(shorter, lettering) <= room) return shorter
  }
  return null
}
/** The same, and where not even the first word fits, as many of its letters as do. */
export function cutWords(words: string, room: number, lettering: { face: Face; weight: Weight; size: number }): string {
  const whole = fitWords(words, room, lettering)
  if (whole !== null) return whole
  const letters = [...words]
  while (letters.length > 1 && textWidth(`${letters.join('')}…`, lettering) > room) letters.pop()
  return `${letters.join('').trimEnd()}…`
}
