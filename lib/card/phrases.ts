import type { Token } from './tokens'

/** A claim that words make without a number. */
export interface Phrase {
  readonly kind: 'doneness' | 'edge-to-edge' | 'safety' | 'unbound'
  readonly says: string
  readonly start: number
  readonly end: number
}

/** Read on the sentence as written. The first group, where there is one, is the claim's words. */
const PHRASES: readonly (readonly [Phrase['kind'], string, RegExp])[] = [
  [
    'safety',
    'not-safe',
    /\b(?:not|never|n[’']t be|isn[’']t) (?:quite )?(?:safe|for (?:guests at risk|everybody|everyone|children))\b/gi,
  ],
  [
    'safety',
    'safe',
    /\bsafe (?:for|to serve to|to eat for) (?:everybody|everyone|all|anybody|anyone|the whole family|children|guests at risk|pregnant \w+|the old)\b/gi,
  ],
  [
    'safety',
    'safe',
    /\b(?:(?:perfectly|completely|entirely|quite) safe|safe to eat|pasteuri[sz]ed|(?:meets|above|over) the (?:food-safety )?authority[’']s minimum|fully cooked|safe (?:at|from|above)(?= \d+ ?(?:°|degrees|[CF]\b)))\b/gi,
  ],
  ['safety', 'below-minimum', /\bbelow the (?:food-safety )?authority[’']s minimum\b/gi],
  [
    'edge-to-edge',
    'all',
    /\b(?:edge[ -]to[ -]edge|wall[ -]to[ -]wall|(?:right|all the way) to the (?:very )?edges?|no grey (?:band|ring|rim)|not a trace of grey)\b/gi,
  ],
  ['doneness', 'medium-rare', /\bmedium[ -]rare\b/gi],
  ['doneness', 'medium-well', /\bmedium[ -]well(?:[ -]done)?\b/gi],
  ['doneness', 'well-done', /\bwell[ -]done\b/gi],
  ['doneness', 'rare', /\b(?<!medium[ -])rare\b(?! (?:treat|breed|occasion|thing|chance))/gi],
  ['doneness', 'medium', /\bmedium\b(?![ -](?:rare|well|heat|fire|high|low|hot|sized?|eggs?|onions?|bowl|flame))/gi],
  [
    'unbound',
    'free-from',
    /\b(?:(?:gluten|wheat|dairy|lactose|milk|eggs?|nuts?|peanuts?|soya?|sesame|fish|shellfish|mustard|celery|allergens?)[ -]free|(?:free|contains no|without any)(?: (?:from|of|any))* (?:gluten|wheat|dairy|lactose|milk|eggs?|nuts?|peanuts?|soya?|sesame|fish|shellfish|mustard|celery|allergens?))\b/gi,
  ],
  ['unbound', 'length-of-day', /\b(?:overnight|all (?:day|night|morning|afternoon|evening))\b/gi],
  [
    'unbound',
    'taste',
    /\b(?:juiciest|juicy|juicier|tender|tenderest|moist|crispy|tasty|flavourful|wonderful|easy|easiest|best|perfect|perfectly(?! safe)|delicious|succulent|foolproof|never fails|melting)\b/gi,
  ],
]

/** Every word of doneness, safety, evenness and praise; where two overlap the earlier row of the table counts. */
export function phrasesIn(sentence: string): Phrase[] {
  const found: Phrase[] = []
  for (const [kind, says, pattern] of PHRASES)
    for (const m of sentence.matchAll(pattern)) {
      const start = m.index
      const end = start + m[0].length
      if (!found.some((p) => p.start < end && p.end > start)) found.push({ kind, says, start, end })
    }
  return found.sort((a, b) => a.start - b.start)
}

/** The token span a phrase takes up. */
export const spanOf = (tokens: readonly Token[], phrase: Phrase) => ({
  from: tokens.findIndex((t) => t.end > phrase.start),
  to: tokens.findLastIndex((t) => t.start < phrase.end) + 1,
})
