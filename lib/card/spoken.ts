/** Amounts that words make: hours, parts, times as long, marks of a gas oven. */
import { andAPart, numberAt, type Read } from './numbers'
import type { Token } from './tokens'

export const DAY_S = 86400

export const said = (tokens: readonly Token[], from: number, count: number) =>
  tokens
    .slice(from, from + count)
    .map((t) => t.text)
    .join(' ')

/** "half an hour", "three quarters of an hour", "an hour and a half", "a couple of hours": hours without a plain number. */
export function spokenHours(tokens: readonly Token[], i: number): Read | null {
  const next = (k: number) => said(tokens, i, k)
  if (/^half an? hour$/.test(next(3))) return { value: 1800, next: i + 3 }
  if (next(3) === 'a half hour') return { value: 1800, next: i + 3 }
  if (/^a quarter of an hour$/.test(next(5))) return { value: 900, next: i + 5 }
  if (next(5) === 'three quarters of an hour') return { value: 2700, next: i + 5 }
  if (next(6) === 'three - quarters of an hour') return { value: 2700, next: i + 6 }
  if (next(2) === 'an hour' || next(2) === 'one hour') {
    const part = andAPart(tokens, i + 2)
    return { value: 3600 * (1 + part.value), next: part.next }
  }
  if (next(4) === 'a couple of hours') return { value: 7200, next: i + 4 }
  if (/^a (?:day|night)$/.test(next(2))) return { value: DAY_S, next: i + 2 }
  if (next(2) === 'a week') return { value: 7 * DAY_S, next: i + 2 }
  return next(2) === 'a minute' ? { value: 60, next: i + 2 } : null
}

const PARTS: Record<string, number> = {
  half: 1 / 2,
  third: 1 / 3,
  quarter: 1 / 4,
  fifth: 1 / 5,
  sixth: 1 / 6,
  eighth: 1 / 8,
  tenth: 1 / 10,
}
/** "a third of", "two thirds of", "half its": a part of a weight or of a face; not "half an hour". */
export function spokenShare(tokens: readonly Token[], i: number): Read | null {
  const first = tokens[i]?.text ?? ''
  const many = first === 'a' || first === 'one' ? 1 : numberAt(tokens, i)?.value
  const at = first === 'half' ? i : many === undefined ? -1 : tokens[i + 1]?.text === '-' ? i + 2 : i + 1
  const part = PARTS[(tokens[at]?.text ?? '').replace(/(?<=third|quarter|fifth|sixth|eighth|tenth)s$/, '')]
  if (part === undefined || !/^(?:of|its)$/.test(tokens[at + 1]?.text ?? '') || tokens[at + 2]?.text === 'an')
    return null
  return { value: (many ?? 1) * part, next: at + 1 }
}

/** "twice as long", "half as long again": against what, the sentence says. */
export function spokenRatio(tokens: readonly Token[], i: number): Read | null {
  if (said(tokens, i, 3) === 'twice as long') return { value: 2, next: i + 3 }
  if (/^(?:half as long again|half again as long)$/.test(said(tokens, i, 4))) return { value: 1.5, next: i + 4 }
  return null
}

/** [gas-mark] marks of a gas oven: 275 °F at mark 1 and 25 °F more for each; two below it. */
export function gasMarkAt(tokens: readonly Token[], i: number): Read | null {
  if (tokens[i]?.text !== 'gas') return null
  const mark = numberAt(tokens, tokens[i + 1]?.text === 'mark' ? i + 2 : i + 1)
  if (!mark || mark.value > 10) return null
  const f = mark.value >= 1 ? 250 + 25 * mark.value : 200 + 100 * mark.value
  return { value: f, next: mark.next }
}
