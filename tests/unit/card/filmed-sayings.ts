import { checkSentence } from '../../../lib/card/check-sentence'
import type { ClaimKind } from '../../../lib/card/claim'
import { dayToleranceOf } from '../../../lib/card/log-rules'
import type { Animal } from '../../../lib/model/cuts'
import { DONENESS_RANGES, donenessAt } from '../../../lib/model/doneness'
import type { Forecast } from '../../../lib/model/forecast'
import { minimumFor } from '../../../lib/model/minimums'
import type { Filmed } from './random-log'
import { type CardContext, SAY, type Trial } from './sayings'

/** How far off a true saying was at most and a false one at least, as a part of what the log's rule allows. */
export interface FilmedTrial extends Trial {
  readonly trueUpTo: number
  readonly falseFrom: number
  /** The model alone would have borne the false one out, or contradicted the true one. */
  readonly againstModel: number
}
export const LOGGED: readonly ClaimKind[] = [
  'warm-up-time',
  'roast-time',
  'sear-time',
  'rest-time',
  'total-time',
  'turn-time',
  'probe-time',
  'pull-temperature',
  'off-heat-temperature',
  'sliced-temperature',
  'carryover-rise',
  'cooker-temperature',
  'sear-temperature',
  'doneness',
  'safety',
]

/** What was so on the day, in the claim's unit, by the day as it was made up; null where it had no such thing. */
function truth(kind: ClaimKind, { atMin, probeC, roastC, searC }: Filmed): number | null {
  const span = (from: number | undefined, to: number | undefined) =>
    from === undefined || to === undefined || to <= from ? null : 60 * (to - from)
  const [off, slice] = [probeC['off-heat'], probeC['first-slice']]
  const all: Partial<Record<ClaimKind, number | null | undefined>> = {
    'warm-up-time': span(atMin['fire-lit'], atMin['cooker-steady']),
    'roast-time': span(0, atMin.pull),
    'sear-time': span(atMin.pull, atMin['off-heat']),
    'rest-time': span(atMin['off-heat'], atMin['first-slice']),
    'total-time': span(atMin['fire-lit'], atMin['first-slice']),
    'turn-time': span(0, atMin.turn),
    'probe-time': span(0, atMin['probe-in']),
    'pull-temperature': probeC.pull,
    'off-heat-temperature': off,
    'sliced-temperature': slice,
    'carryover-rise': off === undefined || slice === undefined || slice - off < 0.5 ? null : slice - off,
    'cooker-temperature': roastC,
    'sear-temperature': searC,
  }
  return all[kind] ?? null
}

/** A word that the filmed middle bears and one that no scale gives to it nor to a degree or two beside it; "safe" where it was well below the minimum. */
function wordsOn(kind: ClaimKind, { probeC }: Filmed, animal: Animal): { so: string | null; notSo: string | null } {
  const sliced = probeC['first-slice'] ?? Number.NaN
  if (kind === 'safety') {
    const below = Math.max(...Object.values(probeC)) < minimumFor({ animal }).tempC - 3
    return { so: null, notSo: below ? 'It is safe for everybody.' : null }
  }
  const far = DONENESS_RANGES.find(
    (r) => Math.min(r.fromC, r.anyFromC) > sliced + 2 || Math.max(r.toC, r.anyToC) < sliced - 2,
  )
  const right = donenessAt({ animal }, sliced)
  const say = (word: string) => `Slice it ${word.replace('-', ' ')}.`
  return right && far ? { so: say(right), notSo: say(far.word) } : { so: null, notSo: null }
}
function tryWords(forecast: Forecast, filmed: Filmed, kind: ClaimKind, card: CardContext): FilmedTrial {
  const { so, notSo } = wordsOn(kind, filmed, card.animal)
  const check = (text: string | null, facts: Filmed['facts']) =>
    text === null
      ? undefined
      : checkSentence(text, { card, forecast, facts, step: 's', before: null }).find((c) => c.kind === kind)
  const [yes, no] = [check(so, filmed.facts), check(notSo, filmed.facts)]
  const tell = (c: typeof yes) => `${kind} filmed: "${c?.sentence}" ${c?.finding} by ${c?.by}, ${c?.found}`
  const alone = [check(so, null)?.finding === 'contradicted', no && check(notSo, null)?.finding !== 'contradicted']
  return {
    tried: notSo !== null,
    trueUpTo: 0,
    falseFrom: Number.POSITIVE_INFINITY,
    againstModel: alone.filter(Boolean).length,
    faults: [
      ...(so === null || yes?.finding.startsWith('borne-out') ? [] : [`true ${tell(yes)}`]),
      ...(notSo === null || (no?.finding === 'contradicted' && no.trueSentence) ? [] : [`false ${tell(no)}`]),
    ],
  }
}

/** Says what was so on a filmed day and what was not: the log decides, whatever the model says of it. */
export function tryFilmed(
  forecast: Forecast,
  filmed: Filmed,
  kind: ClaimKind,
  card: CardContext,
  random: () => number,
): FilmedTrial {
  if (kind === 'doneness' || kind === 'safety') return tryWords(forecast, filmed, kind, card)
  const value = truth(kind, filmed)
  const say = SAY[kind]
  const none = { tried: false, faults: [], trueUpTo: 0, falseFrom: Number.POSITIVE_INFINITY, againstModel: 0 }
  if (value === null || !say) return none
  const [unit, sentence] = say
  const { right, care } = dayToleranceOf(kind, value)
  const grain = unit === 's' ? 60 : 1
  const printed = (x: number) => Math.round(x / grain) * grain
  // A cooker wanders: what is false of it lies beyond everything it read.
  const beyond =
    kind === 'cooker-temperature' ? filmed.roastHighC : kind === 'sear-temperature' ? filmed.searHighC : value
  const near = printed(value + (2 * random() - 1) * 0.8 * right)
  // Print rounds, and readings stand some tenths beside what was so: what both carry further off than the log's rule
  // allows is not true any more.
  const so = Math.abs(near - value) <= 0.6 * right ? near : printed(value)
  const notSo = printed(Math.max(value, beyond) + (1.1 + 3 * random()) * care + grain)
  const check = (text: string, by: Filmed['facts'] = filmed.facts) =>
    checkSentence(text, { card, forecast, facts: by, step: 's', before: null }).filter((c) => c.kind === kind)
  const [yes, no] = [check(sentence(so))[0], check(sentence(notSo))[0]]
  const mended = no?.trueSentence ? check(no.trueSentence).filter((c) => c.finding === 'contradicted') : []
  const tell = (text: string, c: typeof yes) => `${kind}: "${text}" ${c?.finding} by ${c?.by}, ${c?.found}`
  const alone = [
    check(sentence(so), null)[0]?.finding === 'contradicted',
    check(sentence(notSo), null)[0]?.finding !== 'contradicted',
  ]
  return {
    tried: true,
    trueUpTo: Math.abs(so - value) / care,
    falseFrom: Math.abs(notSo - value) / care,
    againstModel: alone.filter(Boolean).length,
    faults: [
      ...(yes?.by === 'log' && yes.finding.startsWith('borne-out') ? [] : [`true ${tell(sentence(so), yes)}`]),
      ...(no?.by === 'log' && no.finding === 'contradicted' && no.figure && no.trueSentence
        ? []
        : [`false ${tell(sentence(notSo), no)}`]),
      ...mended.map((c) => `mended ${tell(c.sentence, c)}`),
    ],
  }
}
