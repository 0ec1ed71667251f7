import { type Quantity, quantitiesIn } from './quantities'
import type { Token } from './tokens'

/** "20 minutes a pound", "40 min per kg and 20 over": how many of those this roast weighs, s more, and where the words end; null where it is no rate. */
export function perMass(
  tokens: readonly Token[],
  q: Quantity,
  massKg: number,
): { times: number; more: number; to: number } | null {
  const per = tokens[q.to]?.text ?? ''
  const [second, third] = [tokens[q.to + 1]?.text ?? '', tokens[q.to + 2]?.text ?? '']
  if (!/^(per|a|each|for|every|\/)$/.test(per) && !(per === 'to' && second === 'the')) return null
  const start = q.to + (/^(a|each|every|the)$/.test(second) && third !== '' ? 2 : 1)
  const counted = /^\d/.test(tokens[start]?.text ?? '')
  const one = { text: '1', start: 0, end: 0 }
  const words = counted ? tokens.slice(start, start + 2) : [one, ...tokens.slice(start, start + 1)]
  const [first] = quantitiesIn(words)
  if (first?.measure !== 'mass' || first.low <= 0) return null
  const end = start + (counted ? 2 : 1)
  const over = overAndAbove(tokens, end)
  return { times: massKg / first.low, more: over?.low ?? 0, to: over?.to ?? end }
}

/** "… plus 20 minutes", "… and 20 minutes over": belongs to the rate before it. */
function overAndAbove(tokens: readonly Token[], from: number): Quantity | null {
  const word = tokens[from]?.text ?? ''
  if (!/^(?:plus|and|\+)$/.test(word)) return null
  const next = quantitiesIn(tokens).find((q) => q.from === from + 1 && q.measure === 'duration')
  if (!next) return null
  if (word !== 'and') return next
  return /^(?:over|extra|more)$/.test(tokens[next.to]?.text ?? '') ? { ...next, to: next.to + 1 } : null
}
