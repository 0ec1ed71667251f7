import { checkSentence, type SentenceContext } from '../../../lib/card/check-sentence'
import { type CheckedClaim, CLAIM_KINDS, type Claim, type ClaimKind, type Figure } from '../../../lib/card/claim'
import { shareMeeting } from '../../../lib/card/coldest'
import { findFigure, pinkShare } from '../../../lib/card/figures'
import { readable, toleranceOf } from '../../../lib/card/rules'
import type { Animal } from '../../../lib/model/cuts'
import { DONENESS_RANGES, donenessAt } from '../../../lib/model/doneness'
import type { Forecast } from '../../../lib/model/forecast'
import { minimumFor } from '../../../lib/model/minimums'
import { spreadOf } from '../../../lib/model/quantiles'

/** Everything a claim can be about but what cannot be bound. */
export const CHECKABLE = CLAIM_KINDS.filter((kind) => kind !== 'unbound')
type Unit = Claim['unit']
export interface Saying {
  readonly kind: ClaimKind
  readonly sentence: string
}
export interface Pair {
  readonly right: Saying
  readonly wrong: Saying
}

const celsius = (v: number) => `${Math.round(v)} °C`
const minutes = (s: number) => `${Math.round(s / 60)} minutes`
type Say = readonly [Unit, (value: number) => string]
/** A sentence for each kind with a number, and the unit it is said in. */
export const SAY: Partial<Record<ClaimKind, Say>> = {
  'cooker-temperature': ['degC', (v) => `Let the cooker settle at ${celsius(v)}.`],
  'sear-temperature': ['degC', (v) => `Sear it over a fire of ${celsius(v)}.`],
  'pull-temperature': ['degC', (v) => `When the middle reads ${celsius(v)}, open the vents.`],
  'off-heat-temperature': ['degC', (v) => `Take it off the heat at ${celsius(v)}.`],
  'sliced-temperature': ['degC', (v) => `Sliced, the middle stands at ${celsius(v)}.`],
  'carryover-rise': ['K', (v) => `The middle climbs ${celsius(v)} by itself.`],
  'warm-up-time': ['s', (v) => `Warming up takes ${minutes(v)}.`],
  'roast-time': ['s', (v) => `Roast it for ${minutes(v)}.`],
  'sear-time': ['s', (v) => `Sear it for ${minutes(v)}.`],
  'rest-time': ['s', (v) => `Rest it for ${minutes(v)}.`],
  'total-time': ['s', (v) => `Dinner takes ${minutes(v)} in all.`],
  'turn-time': ['s', (v) => `Turn it after ${minutes(v)}.`],
  'probe-time': ['s', (v) => `The probe goes in after ${minutes(v)}.`],
  yield: ['1', (v) => `It loses ${Math.round(v * 100)} % of its weight.`],
  'start-temperature': ['degC', (v) => `It comes from the fridge at ${celsius(v)}.`],
  mass: ['kg', (v) => `Buy a leg of ${v.toFixed(1)} kg.`],
  thickness: ['m', (v) => `Choose one ${Math.round(v * 100)} cm thick.`],
  'edge-to-edge': ['1', (v) => `The pink takes ${Math.round(v * 100)} % of the face.`],
}
/** The same said in another measure, half of the time. */
const OTHERWISE: Partial<Record<ClaimKind, readonly Say[]>> = {
  yield: [
    ['kg', (v) => `It gives ${v.toFixed(1)} kg of cooked meat.`],
    ['people', (v) => `Serves ${Math.round(v)}.`],
  ],
  'edge-to-edge': [['m', (v) => `Pink for all but the outer ${Math.round(v * 1000)} mm.`]],
}
const BLANK = {
  id: '',
  cook: '',
  sentence: '',
  step: '',
  words: '',
  start: 0,
  hedge: 'none',
  low: 0,
  high: 0,
  says: '',
} as const

/** How near beside the window a saying is false, in its widths; and never nearer than print can tell. */
const NEAREST = 0.6
const TELLABLE: Partial<Record<Unit, number>> = { s: 240, '1': 0.016, kg: 0.16, m: 0.0035, people: 1.6 }
/** A value inside the figure and one 0.6 to 3 widths outside it, upward where there is no room below. */
function insideAndOut(
  figure: Figure,
  random: () => number,
  grain: number,
  least: number,
): { inside: number; outside: number } {
  const width = figure.high - figure.low
  const off = Math.max(least, (NEAREST + 2.4 * random()) * width)
  const value = figure.low + random() * width
  const inside = Math.min(
    Math.floor(figure.high / grain) * grain,
    Math.max(Math.ceil(figure.low / grain) * grain, value),
  )
  const under = figure.low - off
  return { inside, outside: random() < 0.5 && under > grain ? under : figure.high + off }
}
const PRINTED: Partial<Record<Unit, number>> = { degC: 1, K: 1, s: 60, '1': 0.01, kg: 0.1, m: 0.001, people: 1 }

function sayOf(kind: ClaimKind, random: () => number): Say | undefined {
  const others = OTHERWISE[kind] ?? []
  return others.length > 0 && random() < 0.5 ? others[Math.floor(random() * others.length)] : SAY[kind]
}

/** A true and a false sentence of one kind; null where the plan has no such thing. */
function numberPair(f: Forecast, kind: ClaimKind, boneShare: number, random: () => number): Pair | null {
  const say = sayOf(kind, random)
  if (!say) return null
  const [unit, sentence] = say
  const found = findFigure(f, { ...BLANK, kind, unit }, boneShare)
  if (!found || !Number.isFinite(found.figure.high)) return null
  const saying = (value: number): Saying => ({ kind, sentence: sentence(value) })
  if (found.nature === 'setting') {
    const plan = found.figure.likely
    return { right: saying(plan), wrong: saying(plan + (1.5 + 2.5 * random()) * toleranceOf(kind, plan).care) }
  }
  const { inside, outside } = insideAndOut(
    readable(found.figure, unit),
    random,
    PRINTED[unit] ?? 1,
    TELLABLE[unit] ?? 1.6,
  )
  return { right: saying(inside), wrong: saying(outside) }
}

/** Words are coarse: false is a word that no scale gives to any part of the window, nor to a degree beside it. */
function donenessPair(f: Forecast, animal: Animal): Pair | null {
  const sliced = spreadOf<number>(f.atSlice.probeC)
  const right = donenessAt({ animal }, sliced.likely)
  const far = DONENESS_RANGES.find(
    (r) => Math.min(r.fromC, r.anyFromC) > sliced.high + 1 || Math.max(r.toC, r.anyToC) < sliced.low - 1,
  )
  if (!right || !far) return null
  const say = (word: string): Saying => ({ kind: 'doneness', sentence: `Slice it ${word.replace('-', ' ')}.` })
  return { right: say(right), wrong: say(far.word) }
}

function safetyPair(f: Forecast, animal: Animal): Pair | null {
  const safe: Saying = { kind: 'safety', sentence: 'It is safe for everybody.' }
  const below: Saying = { kind: 'safety', sentence: 'This is below the authority’s minimum.' }
  const share = shareMeeting(f, minimumFor({ animal }))
  if (share >= 0.95) return { right: safe, wrong: below }
  // Where only some cooks keep the minimum neither sentence is false.
  return share < 0.5 ? { right: below, wrong: safe } : null
}

/** What the printed tables say of keeping, and what they do not. */
function keepingPair(massKg: number, random: () => number): Pair {
  const between = (low: number, high: number) => Math.round(low + random() * (high - low))
  const water = (massKg / 0.45359237) * 30
  const pairs: readonly (readonly [string, string])[] = [
    [`It keeps for ${between(2, 4)} days in the fridge.`, `It keeps for ${between(5, 14)} days in the fridge.`],
    [`Chill it within ${between(30, 120)} minutes.`, `Chill it within ${between(130, 480)} minutes.`],
    [`Reheat it to ${between(74, 90)} °C.`, `Reheat it to ${between(40, 72)} °C.`],
    [`Keep it in a fridge at ${between(1, 4)} °C.`, `Keep it in a fridge at ${between(6, 12)} °C.`],
    ['From frozen it takes 1.5 times as long.', `From frozen it takes ${between(2, 4)} times as long.`],
    [
      `It thaws in cold water in ${Math.round(water)} minutes.`,
      `It thaws in cold water in ${Math.round(water * (0.2 + 0.5 * random()))} minutes.`,
    ],
    [`It cools to 21 °C within ${between(60, 120)} minutes.`, `It cools to 21 °C within ${between(150, 400)} minutes.`],
  ]
  const [right, wrong] = pairs[Math.floor(random() * pairs.length)] as readonly [string, string]
  return { right: { kind: 'keeping', sentence: right }, wrong: { kind: 'keeping', sentence: wrong } }
}

export function pairFor(
  f: Forecast,
  kind: ClaimKind,
  context: { animal: Animal; boneShare: number },
  random: () => number,
): Pair | null {
  if (kind === 'doneness') return donenessPair(f, context.animal)
  if (kind === 'safety') return safetyPair(f, context.animal)
  if (kind === 'keeping') return keepingPair(f.cook.roast.mass, random)
  const pair = numberPair(f, kind, context.boneShare, random)
  const face = pinkShare(f)
  if (pair && kind === 'edge-to-edge' && face && face.likely < 0.85 && random() < 0.5)
    return { ...pair, wrong: { kind, sentence: 'It is pink from edge to edge.' } }
  return pair
}

export type CardContext = SentenceContext['card']
export interface Trial {
  readonly tried: boolean
  /** What went wrong, each in a line; none is right. */
  readonly faults: readonly string[]
}

/**
 * Says a true and a false thing of one kind: the true one must not be contradicted, the false one must, with its figure
 * and a sentence that holds when it is read again.
 */
export function tryKind(forecast: Forecast, kind: ClaimKind, card: CardContext, random: () => number): Trial {
  const pair = pairFor(forecast, kind, card, random)
  if (!pair) return { tried: false, faults: [] }
  const check = (sentence: string) => checkSentence(sentence, { card, forecast, step: 's', before: null })
  const tell = (saying: Saying, c: CheckedClaim | undefined) =>
    `${forecast.cook.roast.cut}: "${saying.sentence}" ${c?.finding}, ${c?.found}`
  const [right] = check(pair.right.sentence).filter((c) => c.kind === kind)
  const [wrong] = check(pair.wrong.sentence).filter((c) => c.kind === kind)
  const mended = wrong?.trueSentence ? check(wrong.trueSentence).filter((c) => c.finding === 'contradicted') : []
  return {
    tried: true,
    faults: [
      ...(right?.finding.startsWith('borne-out') ? [] : [`true ${tell(pair.right, right)}`]),
      ...(wrong?.finding === 'contradicted' && wrong.figure && wrong.trueSentence
        ? []
        : [`false ${tell(pair.wrong, wrong)}`]),
      ...mended.map((c) => `mended "${c.sentence}" ${c.found}`),
    ],
  }
}
