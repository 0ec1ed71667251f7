import type { Claim } from './claim'
import { said } from './spoken'
import type { Token } from './tokens'

type Hedge = Claim['hedge']
/** What is denied comes first: "never below" is no "below". */
const HEDGES: readonly (readonly [RegExp, Hedge])[] = [
  [/(?:^| )(?:(?:not|never|no) (?:below|under|less than|cooler than|lower than)|no earlier than)$/, 'at-least'],
  [
    /(?:^| )(?:(?:not|never|no) (?:above|over|more than|longer than|hotter than|warmer than|higher than)|no later than)$/,
    'at-most',
  ],
  [/(?:^| )(?:at most|less than|under|within|up to|below|well under|cooler than|colder than)$/, 'at-most'],
  [/(?:^| )(?:at least|more than|upwards of|over|above|hotter than|warmer than|a minimum of)$/, 'at-least'],
  [/(?:^| )(?:about|around|roughly|some|approximately|nearly|almost|just over|just under|~|good)$/, 'about'],
]
export function hedgeBefore(tokens: readonly Token[], i: number): { hedge: Hedge; from: number } {
  const words = (from: number) =>
    tokens
      .slice(from, i)
      .map((t) => t.text)
      .join(' ')
  for (const [pattern, hedge] of HEDGES) {
    const match = words(Math.max(0, i - 3)).match(pattern)
    if (match) return { hedge, from: i - match[0].trim().split(' ').length }
  }
  return { hedge: 'none', from: i }
}

/** Said behind the number: "63 °C or more", "an hour or so". */
const HEDGES_AFTER: readonly (readonly [RegExp, Hedge])[] = [
  [/^(?:(?:or|and) (?:more|above|hotter|over|higher|longer|warmer|up)|at least)\b/, 'at-least'],
  [/^(?:or (?:less|under|below|cooler|colder|sooner)|at most)\b/, 'at-most'],
  [/^or (?:so|thereabouts)\b/, 'about'],
]
export function hedgeAfter(tokens: readonly Token[], to: number): { hedge: Hedge; to: number } | null {
  for (const [pattern, hedge] of HEDGES_AFTER) if (pattern.test(said(tokens, to, 2))) return { hedge, to: to + 2 }
  return null
}

export const between = (tokens: readonly Token[], i: number) => tokens[i - 1]?.text === 'between'
