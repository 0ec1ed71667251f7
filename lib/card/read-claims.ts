import { keepingLevel, keepingTime } from './bind-keeping'
import type { Claim, ClaimKind } from './claim'
import { cuesIn, type Hit, type Topic, topicOf } from './cues'
import { perMass } from './per-mass'
import { type Phrase, phrasesIn, spanOf } from './phrases'
import { type Quantity, quantitiesIn } from './quantities'
import { type Token, tokensOf } from './tokens'

/** What the sentence stands in: its cook, its step, and what the sentence before it was about. */
export interface ClaimContext {
  readonly cook: string
  readonly step: string
  /** Raw mass, for "20 minutes per pound". */
  readonly massKg: number
  readonly before?: Topic | null
}

interface Bound extends Pick<Claim, 'kind' | 'low' | 'high' | 'unit' | 'says'> {
  /** Where its words end, where they are more than the number's. */
  readonly to?: number
  /** Said of the rest: at least 80 % kept is at most 20 % lost. */
  readonly turned?: true
}
const bound = (kind: ClaimKind, unit: Claim['unit'], low: number, high: number, says = ''): Bound => ({
  kind,
  unit,
  low,
  high,
  says,
})
const unbound = (says: string): Bound => bound('unbound', 'word', 0, 0, says)

const TIME_KIND: Partial<Record<Topic, ClaimKind>> = {
  warm: 'warm-up-time',
  roast: 'roast-time',
  sear: 'sear-time',
  rest: 'rest-time',
  total: 'total-time',
  turn: 'turn-time',
  probe: 'probe-time',
}
/** At and above this a temperature is the cooker's, whatever the sentence; no meat is served boiling. */
const COOKER_FROM_C = 95
const MEAT_KIND: Partial<Record<Topic, ClaimKind>> = {
  roast: 'pull-temperature',
  pull: 'pull-temperature',
  sear: 'off-heat-temperature',
  off: 'off-heat-temperature',
  rest: 'sliced-temperature',
  slice: 'sliced-temperature',
  warm: 'cooker-temperature',
  cooker: 'cooker-temperature',
  start: 'start-temperature',
}

interface Sentence {
  readonly tokens: readonly Token[]
  readonly hits: readonly Hit[]
  readonly context: ClaimContext
}

function bindTime(s: Sentence, q: Quantity, topic: Topic | null): Bound {
  if (followsMinimum(s, q)) return bound('safety', 's', q.low, q.high, 'minimum-rest')
  if (s.tokens[q.from - 1]?.text === 'every') return unbound('how-often')
  const rate = perMass(s.tokens, q, s.context.massKg)
  const [low, high] = rate ? [q.low * rate.times + rate.more, q.high * rate.times + rate.more] : [q.low, q.high]
  const to = rate ? { to: rate.to } : {}
  const kept = topic === 'storage' || takenOut(s, topic) ? keepingTime(wordsOf(s), { low, high }, levelIn(s)) : null
  if (kept) return { ...bound('keeping', 's', low, high, kept), ...to }
  if (rate) return { ...bound('roast-time', 's', low, high), ...to }
  const kind = topic ? TIME_KIND[topic] : undefined
  if (topic === 'lead') return bound('warm-up-time', 's', q.low, q.high, 'lead')
  if (kind) return bound(kind, 's', q.low, q.high)
  return unbound(topic === 'storage' ? 'storage' : topic ? 'aside' : 'time')
}

/** "Out of the fridge an hour before it goes on" is no time of the fire's, though it leads to the same moment. */
const takenOut = (s: Sentence, topic: Topic | null) => topic === 'lead' && /\bout of the fridge\b/.test(wordsOf(s))
const wordsOf = (s: Sentence) => s.tokens.map((t) => t.text).join(' ')
const levelIn = (s: Sentence) => quantitiesIn(s.tokens).find((q) => q.measure === 'temperature')?.low ?? null

/** "63 °C, then 3 minutes": the rest that the authority's minimum asks for. */
const followsMinimum = (s: Sentence, q: Quantity) =>
  s.hits.some((h) => h.topic === 'authority' && h.to <= q.from) &&
  s.tokens.slice(Math.max(0, q.from - 4), q.from).some((t) => t.text === 'c' || t.text === 'f')

const RISING =
  /(?:^| )(?:climb|climbs|rise|rises|rising|gain|gains|go up|goes up|come up|comes up|increase|increases|carryover(?: of)?|carries over|up)(?: by| about| around| roughly| another| some| a further| of| between)*$/
/** A difference and not a level: "climbs 3 to 5 °C", "by another 5 °C", "5 °C more", but not "climbs to 57 °C". */
function isRise(s: Sentence, q: Quantity): boolean {
  const words = (from: number, to: number) =>
    s.tokens
      .slice(Math.max(0, from), to)
      .map((t) => t.text)
      .join(' ')
  const after = words(q.to, q.to + 2)
  return (
    RISING.test(words(q.from - 5, q.from)) ||
    /^(?:more|higher|further|of carryover|carryover)/.test(after) ||
    /(?:^| )(?:by|another|by about|by another)$/.test(words(q.from - 2, q.from))
  )
}

function bindTemperature(s: Sentence, q: Quantity, topic: Topic | null): Bound {
  if (isRise(s, q)) return bound('carryover-rise', 'K', q.lowK, q.highK)
  if (topic === 'authority') return bound('safety', 'degC', q.low, q.high, 'minimum')
  if (q.low >= COOKER_FROM_C && topic !== 'slice' && topic !== 'rest') return bindCooker(s, q, topic)
  const kept = keepingLevel(wordsOf(s), topic)
  if (kept) return bound('keeping', 'degC', q.low, q.high, kept)
  const kind = topic ? MEAT_KIND[topic] : undefined
  const says = kind === 'sliced-temperature' && s.tokens.some((t) => t.text === 'coldest') ? 'coldest' : ''
  return kind ? bound(kind, 'degC', q.low, q.high, says) : unbound('level')
}

/** "A fire of 320 °C" is the sear's where the sentence sears: the work says more than the cooker's name. */
function bindCooker(s: Sentence, q: Quantity, topic: Topic | null): Bound {
  const work = topicOf(
    s.tokens,
    s.hits.filter((h) => h.topic !== 'cooker'),
    q.measure,
    q.from,
    q.to,
  )
  const meant = topic === 'cooker' ? (work ?? topic) : topic
  if (!meant) return unbound('level')
  return bound(meant === 'sear' || meant === 'off' ? 'sear-temperature' : 'cooker-temperature', 'degC', q.low, q.high)
}

function bindShare(q: Quantity, topic: Topic | null): Bound {
  if (topic === 'loss') return bound('yield', '1', q.low, q.high)
  if (topic === 'kept') return { ...bound('yield', '1', 1 - q.high, 1 - q.low), turned: true }
  return topic === 'face' ? bound('edge-to-edge', '1', q.low, q.high, 'share') : unbound('share')
}

function bindMass(q: Quantity, topic: Topic | null): Bound {
  if (topic === 'cooked') return bound('yield', 'kg', q.low, q.high)
  return topic === 'meat' ? bound('mass', 'kg', q.low, q.high) : unbound('amount')
}

function bindLength(s: Sentence, q: Quantity, topic: Topic | null): Bound {
  // How thick it is sliced is the carver's own to choose.
  if (topic === 'thick' && s.tokens.some(({ text }) => /^(?:slices?|carve)$/.test(text))) return unbound('length')
  if (topic === 'thick') return bound('thickness', 'm', q.low, q.high)
  return topic === 'band' ? bound('edge-to-edge', 'm', q.low, q.high, 'band') : unbound('length')
}

function bind(s: Sentence, q: Quantity): Bound {
  const near = topicOf(s.tokens, s.hits, q.measure, q.from, q.to)
  const timed = q.measure === 'duration' || q.measure === 'temperature'
  const topic = near ?? (timed ? (s.context.before ?? null) : null)
  if (q.measure === 'duration') return bindTime(s, q, topic)
  if (q.measure === 'temperature') return bindTemperature(s, q, topic)
  if (q.measure === 'share') return bindShare(q, topic)
  if (q.measure === 'mass') return bindMass(q, topic)
  if (q.measure === 'length') return bindLength(s, q, topic)
  if (q.measure === 'ratio')
    return /\bfrozen\b/.test(wordsOf(s)) ? bound('keeping', '1', q.low, q.high, 'from-frozen') : unbound('ratio')
  if (q.measure === 'count' && ofHeat(s, q)) return unbound('degrees')
  if (q.measure === 'count' && topic === 'served') return bound('yield', 'people', q.low, q.high)
  return unbound(q.measure)
}

/** "Hotter than 60", "reads 52": degrees, and nobody says of which scale. */
const ofHeat = (s: Sentence, q: Quantity) =>
  /(?:hotter|warmer|cooler|colder) than|reads|reading|temperature of/.test(
    s.tokens
      .slice(Math.max(0, q.from - 2), q.to)
      .map((t) => t.text)
      .join(' '),
  )

/** The temperature that a safety claim names ("safe for everybody at 52 °C") belongs to it. */
const namedLevel = (quantities: readonly Quantity[], span: { from: number; to: number }): Quantity | undefined =>
  quantities.find(
    (q) =>
      q.measure === 'temperature' &&
      q.low < COOKER_FROM_C &&
      Math.min(Math.abs(q.from - span.to), Math.abs(span.from - q.to)) <= 4,
  )

interface Piece extends Omit<Bound, 'to' | 'turned'> {
  readonly hedge: Claim['hedge']
  readonly start: number
  readonly end: number
}
const charSpan = (s: Sentence, from: number, to: number) => ({
  start: s.tokens[from]?.start ?? 0,
  end: s.tokens[to - 1]?.end ?? 0,
})

function phrasePiece(phrase: Phrase, level: Quantity | undefined): Piece {
  const at = level && phrase.kind === 'safety' && phrase.says === 'safe'
  const kind = at
    ? bound('safety', 'degC', level.low, level.high, 'safe')
    : bound(phrase.kind, 'word', 0, 0, phrase.says)
  return { ...kind, hedge: 'none', start: phrase.start, end: phrase.end }
}

/** A limit inside a claim about the cut face ("60 % stayed below 65 °C") or about cooling ("to 21 °C in 2 h") makes no claim of its own. */
function isLimit(s: Sentence, q: Quantity, all: readonly Quantity[]): boolean {
  if (q.measure !== 'temperature') return false
  if (q.hedge === 'at-most' && all.some((o) => o.measure === 'share')) return true
  const cools = s.tokens.some(({ text }) => /^cool(?:s|ed)?$/.test(text))
  return cools && q.low < COOKER_FROM_C && all.some((o) => o.measure === 'duration')
}

type Hedge = Claim['hedge']
const TURNED: Partial<Record<Hedge, Hedge>> = { 'at-least': 'at-most', 'at-most': 'at-least' }
function numberPiece({ turned, ...made }: Bound, said: Hedge, span: { start: number; end: number }): Piece {
  const hedge = (turned && TURNED[said]) ?? said
  return {
    ...made,
    low: hedge === 'at-most' ? Number.NEGATIVE_INFINITY : made.low,
    high: hedge === 'at-least' ? Number.POSITIVE_INFINITY : made.high,
    hedge,
    ...span,
  }
}

function piecesOf(s: Sentence, sentence: string): Piece[] {
  const quantities = quantitiesIn(s.tokens)
  const taken = new Set<Quantity>()
  const phrases = phrasesIn(sentence).map((phrase) => {
    const level = phrase.kind === 'safety' ? namedLevel(quantities, spanOf(s.tokens, phrase)) : undefined
    if (level && phrase.says === 'safe') taken.add(level)
    return phrasePiece(phrase, level)
  })
  const numbers: Piece[] = []
  let covered = 0
  for (const q of quantities) {
    const plainOne = q.measure === 'count' && s.tokens[q.from]?.text === 'one'
    if (q.from < covered || taken.has(q) || plainOne || isLimit(s, q, quantities)) continue
    const { to = q.to, ...made } = bind(s, q)
    numbers.push(numberPiece(made, q.hedge, charSpan(s, q.from, to)))
    covered = to
  }
  return [...phrases, ...numbers].sort((a, b) => a.start - b.start)
}

/**
 * The claims an author's sentence makes, from left to right: each number, word of doneness, evenness, safety or praise
 * is bound to what it is about by the words around it. What cannot be bound is a claim too, of kind `unbound`.
 */
export function readClaims(sentence: string, context: ClaimContext): Claim[] {
  const tokens = tokensOf(sentence)
  const s: Sentence = { tokens, hits: cuesIn(tokens), context }
  const seen = new Map<string, number>()
  return piecesOf(s, sentence).map(({ start, end, ...piece }) => {
    const nth = (seen.get(piece.kind) ?? 0) + 1
    seen.set(piece.kind, nth)
    const id = `${context.step}.${piece.kind}${nth > 1 ? `.${nth}` : ''}`
    return { id, ...piece, cook: context.cook, sentence, step: context.step, words: sentence.slice(start, end), start }
  })
}

/** What a sentence is about, for the one that follows it in the same step ("… settle at 150 °C. About 50 minutes."). */
export function topicLeftBy(sentence: string): Topic | null {
  const lasting: readonly Topic[] = ['warm', 'roast', 'sear', 'rest', 'total']
  return (
    cuesIn(tokensOf(sentence))
      .filter((h) => lasting.includes(h.topic) && h.of.includes('duration'))
      .sort((a, b) => a.from - b.from)
      .at(-1)?.topic ?? null
  )
}
