import type { Face, Weight } from '../export/drawing'
import { textWidth } from '../export/text-width'

/** The printer's own measure differs a little from ours by kerning. */
const AIR = 1.02

/** Lines that words take in a column, filled word by word as the printer fills them; a no-break space holds. */
export function lineCount(
  words: string,
  roomPt: number,
  lettering: { face: Face; weight: Weight; size: number },
): number {
  if (words === '') return 0
  const width = (text: string) => textWidth(text, lettering) * AIR
  let [lines, used] = [1, 0]
  for (const word of words.split(' ')) {
    const takes = width(word)
    const beside = used === 0 ? takes : used + width(' ') + takes
    if (beside > roomPt && used > 0) {
      lines++
      used = takes
    } else used = beside
  }
  return lines
}
