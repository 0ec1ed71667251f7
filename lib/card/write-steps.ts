import type { Cut } from '../model/cuts'
import { donenessAt } from '../model/doneness'
import type { Forecast } from '../model/forecast'
import { medianOf, spreadOf } from '../model/quantiles'
import { celsius, formatTempBoth } from '../units'
import { between, findFigure, stagesOf } from './figures'
import { aboutTime, levelWords, settingWords, timeWords } from './wording'

/** A step as the plan would have it written. */
export interface WrittenStep {
  readonly id: string
  readonly text: string
}
interface Telling {
  readonly f: Forecast
  readonly cut: Cut
  readonly charcoal: boolean
  readonly sear: ReturnType<typeof stagesOf<'sear'>>[number] | undefined
}
const LIKELY_BLANK = {
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

/** The window of a time in words, where most cooks get there. */
function times(t: Telling, kind: 'warm-up-time' | 'roast-time' | 'sear-time' | 'rest-time'): string | null {
  const found = findFigure(t.f, { ...LIKELY_BLANK, kind, unit: 's' }, t.cut.boneShare)
  return found && Number.isFinite(found.figure.likely) && found.figure.likely > 60 ? timeWords(found.figure) : null
}
const sentences = (...parts: readonly (string | null | false)[]) => parts.filter(Boolean).join(' ')

function fire(t: Telling): WrittenStep {
  const at = stagesOf(t.f, 'preheat').at(-1)?.at ?? stagesOf(t.f, 'roast')[0]?.at ?? celsius(0)
  if (stagesOf(t.f, 'preheat').some((s) => s.cold))
    return { id: 'fire', text: `Set the oven to ${settingWords(at)} and put the meat in at once.` }
  const lit = between(t.f, 'fire-lit', 'meat-on')
  const lead = lit && medianOf(lit) >= 60 ? ` about ${aboutTime(medianOf(lit))} before the meat goes on` : ''
  const start = t.charcoal ? 'Light the fire' : 'Heat the oven'
  const long = times(t, 'warm-up-time')
  const settle = `Let ${t.charcoal ? 'the cooker' : 'it'} settle at ${settingWords(at)}.`
  return { id: 'fire', text: sentences(`${start}${lead}.`, settle, long && `Warming up takes ${long}.`) }
}

function turnAndProbe(t: Telling): string | null {
  const stages = stagesOf(t.f, 'roast')
  const turn = t.f.moments.turn
  const probe = stages.find((s) => s.probe)?.probe?.at
  const push = `push the probe into the thickest part${t.cut.boneShare > 0.02 ? ', clear of the bone' : ''}`
  const turned = turn && Number.isFinite(medianOf(turn)) ? `Turn it after about ${aboutTime(medianOf(turn))}` : null
  if (turned && probe === 'turn') return `${turned}, and ${push}.`
  const start = probe === 'start' ? `${push.charAt(0).toUpperCase()}${push.slice(1)}.` : null
  const timed = typeof probe === 'number' ? `After ${aboutTime(probe)} the probe goes in: ${push}.` : null
  return sentences(start ?? timed, turned && `${turned}.`) || null
}

function roast(t: Telling): WrittenStep {
  const at = stagesOf(t.f, 'roast')[0]?.at ?? celsius(0)
  const place = t.charcoal ? 'away from the coals, lid shut' : 'in the middle of the oven'
  return { id: 'roast', text: sentences(`Roast it ${place}, at ${settingWords(at)}.`, turnAndProbe(t)) }
}

function pull(t: Telling): WrittenStep {
  const until = stagesOf(t.f, 'roast').at(-1)?.until
  const long = times(t, 'roast-time')
  const then = t.sear ? (t.charcoal ? 'open the vents wide' : 'turn the heat up') : 'take it off the heat'
  const when =
    until && 'core' in until ? `When the probe reads ${formatTempBoth(until.core)}, ${then}.` : `Then ${then}.`
  return { id: 'pull', text: sentences(when, long && `Expect this ${long} after the meat went on.`) }
}

function sear(t: Telling): WrittenStep[] {
  if (!t.sear) return []
  const until = 'core' in t.sear.until ? `, until the middle reads ${formatTempBoth(t.sear.until.core)}` : ''
  const long = times(t, 'sear-time')
  const open = t.charcoal ? 'from opening the vents' : 'from turning up the heat'
  return [
    {
      id: 'sear',
      text: sentences(
        `Sear it on every side, at about ${settingWords(t.sear.at)}${until}.`,
        long && `The sear takes ${long} ${open}.`,
      ),
    },
  ]
}

function rest(t: Telling): WrittenStep {
  const long = times(t, 'rest-time')
  const sliced = spreadOf<number>(t.f.atSlice.probeC)
  const word = donenessAt(t.cut, sliced.likely)
  const held = long ? `Rest it for ${long}, uncovered.` : 'Let it stand just long enough to find the knife.'
  const middle = `The middle comes to ${levelWords(sliced)} when sliced${word ? `, ${word.replace('-', ' ')}` : ''}.`
  return { id: 'rest', text: sentences(held, middle) }
}

/** The steps as the plan and its forecast have them, every number with its window, temperatures in both units. */
export function writtenSteps(f: Forecast, cut: Cut): WrittenStep[] {
  const t: Telling = { f, cut, charcoal: f.cook.cooker.kind.endsWith('charcoal'), sear: stagesOf(f, 'sear')[0] }
  const bird = cut.animal === 'turkey' || cut.animal === 'chicken' || cut.animal === 'duck' || cut.animal === 'goose'
  return [
    { id: 'season', text: 'Salt it all over the day before, and keep it in the fridge, uncovered.' },
    fire(t),
    roast(t),
    pull(t),
    ...sear(t),
    rest(t),
    {
      id: 'slice',
      text: bird
        ? 'Take off the legs, then slice the breast across the grain.'
        : 'Slice across the grain, and serve at once.',
    },
  ]
}

/** "Leg of lamb, roasted slow, seared last". */
export function writtenTitle(f: Forecast, cut: Cut): string {
  const [name = cut.name] = cut.name.split(',')
  const cased = name.charAt(0).toUpperCase() + name.slice(1)
  return stagesOf(f, 'sear').length > 0 ? `${cased}, roasted slow, seared last` : `${cased}, roasted`
}

/** "About 4 h 15 in all, from lighting the fire to the first slice." */
export function writtenIntro(f: Forecast): string {
  const total = between(f, 'fire-lit', 'first-slice')
  const likely = total ? medianOf(total) : Number.NaN
  const lit = f.cook.cooker.kind.endsWith('charcoal') ? 'lighting the fire' : 'switching on'
  return Number.isFinite(likely) ? `About ${aboutTime(likely)} in all, from ${lit} to the first slice.` : ''
}
