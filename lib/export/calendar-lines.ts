import type { Instant } from '../units'

/** How a line of an iCalendar file is written (RFC 5545, sections 3.1, 3.3.5 and 3.3.11). */

/** Octets a line may have, its line end not counted. [rfc-5545] section 3.1 */
const LONGEST_OCTETS = 75

const octetsOf = (point: number) => (point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4)

/** Folded between characters, never within one: each further piece begins with a space, which counts. */
export function folded(line: string): string {
  let [out, octets] = ['', 0]
  for (const character of line) {
    const takes = octetsOf(character.codePointAt(0) as number)
    if (octets + takes > LONGEST_OCTETS) {
      out += '\r\n '
      octets = 1
    }
    out += character
    octets += takes
  }
  return out
}

/** Control characters have no place in a text; half of a surrogate pair is no character. */
const UNFIT = /(?![\n\t])[\p{Cc}\p{Cs}]/gu

/** A text value: line ends become \n; backslash, semicolon and comma are escaped. */
export const textValue = (text: string) =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(UNFIT, '')
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replaceAll('\n', '\\n')

/** UTC, to the second: "20270515T143000Z". The reader's calendar knows its own zone, so no clock change can shift it. */
export const utcValue = (at: Instant) =>
  `${new Date(Math.round(at / 1000) * 1000).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`
