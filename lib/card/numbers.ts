import type { Token } from './tokens'

/** A number as read at a place, and the place after it. */
export interface Read {
  readonly value: number
  readonly next: number
}

const FRACTIONS: Record<string, number> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
}
const SMALL =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  )
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ')
const isDigits = (text: string | undefined) => text !== undefined && /^\d/.test(text)

function spokenAt(tokens: readonly Token[], i: number): Read | null {
  const text = tokens[i]?.text ?? ''
  const small = SMALL.indexOf(text)
  if (small > 0)
    return tokens[i + 1]?.text === 'hundred' ? hundreds(tokens, i + 2, small * 100) : { value: small, next: i + 1 }
  if (text === 'dozen') return { value: 12, next: i + 1 }
  const tens = TENS.indexOf(text)
  if (tens < 0) return null
  const value = (tens + 2) * 10
  const dash = tokens[i + 1]?.text === '-' ? i + 2 : i + 1
  const ones = SMALL.indexOf(tokens[dash]?.text ?? '')
  return ones > 0 && ones < 10 ? { value: value + ones, next: dash + 1 } : { value, next: i + 1 }
}

function hundreds(tokens: readonly Token[], i: number, value: number): Read {
  const rest = spokenAt(tokens, tokens[i]?.text === 'and' ? i + 1 : i)
  return rest && rest.value < 100 ? { value: value + rest.value, next: rest.next } : { value, next: i }
}

function digitsAt(tokens: readonly Token[], i: number): Read {
  const whole = plainValue(tokens[i]?.text ?? '')
  const fraction = FRACTIONS[tokens[i + 1]?.text ?? '']
  if (fraction !== undefined) return { value: whole + fraction, next: i + 2 }
  // "1/2", "2 1/2"
  const alone = vulgarAt(tokens, i)
  if (alone) return alone
  const part = vulgarAt(tokens, i + 1)
  return part ? { value: whole + part.value, next: part.next } : { value: whole, next: i + 1 }
}

function vulgarAt(tokens: readonly Token[], i: number): Read | null {
  const [over = '', slash, under = ''] = [0, 1, 2].map((k) => tokens[i + k]?.text)
  if (!/^\d+$/.test(over) || slash !== '/' || !/^[2-9]$|^16$/.test(under) || Number(over) >= Number(under)) return null
  return { value: Number(over) / Number(under), next: i + 3 }
}

/** "1,5" is one and a half, "1,500" fifteen hundred. */
const plainValue = (text: string) =>
  Number(/^[1-9]\d{0,2},\d{3}$/.test(text) ? text.replace(',', '') : text.replace(',', '.'))

/** "and a half" after a number, as the part to add. */
export function andAPart(tokens: readonly Token[], i: number): Read {
  const words = [0, 1, 2].map((k) => tokens[i + k]?.text)
  const part = words[2] === 'half' ? 0.5 : words[2] === 'quarter' ? 0.25 : 0
  return words[0] === 'and' && words[1] === 'a' && part > 0 ? { value: part, next: i + 3 } : { value: 0, next: i }
}

/** A sign that touches the figure after it and not the word before it: "−3", but not "10-15". */
function isMinus(tokens: readonly Token[], i: number): boolean {
  const [before, sign, after] = [tokens[i - 1], tokens[i], tokens[i + 1]]
  if (!sign || !after || !/^[-−]$/.test(sign.text) || !isDigits(after.text)) return false
  return sign.end === after.start && (!before || before.end < sign.start)
}

/** The number that begins at token i, in figures, fractions or words; null where there is none. "A" and "an" are left to the unit. */
export function numberAt(tokens: readonly Token[], i: number): Read | null {
  const text = tokens[i]?.text
  if (text === undefined) return null
  if (isMinus(tokens, i)) {
    const read = numberAt(tokens, i + 1)
    return read && { value: -read.value, next: read.next }
  }
  const fraction = FRACTIONS[text]
  if (fraction !== undefined) return { value: fraction, next: i + 1 }
  const read = isDigits(text) ? digitsAt(tokens, i) : spokenAt(tokens, i)
  if (!read) return null
  const part = andAPart(tokens, read.next)
  return { value: read.value + part.value, next: part.next }
}
