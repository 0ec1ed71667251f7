import { COOKER_KINDS, type CookerKind } from '../model/cook'
import { knownCutOf } from '../model/custom-cut'
import { DONENESS_RANGES, wordsFor } from '../model/doneness'
import { isPoultry } from '../model/dwell-table'
import type { Forecast } from '../model/forecast'
import { minimumFor } from '../model/minimums'
import { medianOf } from '../model/quantiles'
import { typedClock } from '../plan/as-read'
import { HIGHEST_CORE_C, ROAST_MASS } from '../plan/bounds'
import { cookerName } from '../plan/moments'
import type { Cook, Shoot } from '../plan/shoot'
import type { Problem, Result } from '../refusals'
import {
  type Celsius,
  celsius,
  formatLength,
  formatTempBoth,
  type Kilograms,
  type Metres,
  metres,
  readQuantity,
} from '../units'
import { levelOf } from './doneness-rows'
import { bareShoot, goesIn, pullOf, thicknessOf } from './other-cook'
import { minimumWords } from './wording'

/** What a reader's browser is told of the card: its cook, and nobody and nowhere. */
export interface CardBasis {
  readonly shoot: Shoot
  readonly pull: Celsius
  /** What the probe reads when the filmed roast is sliced. */
  readonly sliced: Celsius
}
export const basisOf = (shoot: Shoot, filmed: Forecast): CardBasis => ({
  shoot: bareShoot(shoot),
  pull: pullOf(filmed),
  sliced: celsius(medianOf(filmed.atSlice.probeC)),
})
export const cookOf = ({ shoot }: CardBasis) => shoot.cooks[0] as Cook

/** As the reader fills it in; "" for what they leave. */
export interface Filled {
  readonly thickness: string
  readonly weight: string
  readonly start: string
  readonly cooker: string
  readonly done: string
  readonly core: string
  readonly serve: string
}
/** The middle when sliced as the probe reads it, and whether the coldest point must keep the authority's minimum. */
export interface Goal {
  readonly middle: Celsius | null
  readonly minimum: boolean
}
export interface Wish {
  readonly thickness: Metres
  readonly mass: Kilograms | null
  readonly start: Celsius
  readonly cooker: CookerKind
  readonly goal: Goal
  /** Minutes after midnight. */
  readonly serveMin: number | null
}
export type Choice = readonly [value: string, words: string]

/** An hour in a kitchen warms the outside well and the middle hardly. [estimate] */
const STARTS = [
  ['fridge', 'straight from the fridge', 4],
  ['out', 'an hour out of the fridge', 8],
] as const
export const startChoices: readonly Choice[] = STARTS.map(([value, words]) => [value, words])

export const cookerChoices = (basis: CardBasis): readonly Choice[] =>
  COOKER_KINDS.filter((kind) => goesIn(cookOf(basis), kind)).map((kind) => [kind, cookerName(kind)])

const animalOf = (basis: CardBasis) => knownCutOf(cookOf(basis).roast).animal
const whole = (level: number) => formatTempBoth(celsius(Math.round(level)))

/** Pulled as on the card, sliced as filmed, the cooks' words, the authority's minimum, or a temperature; of poultry nothing below its minimum. */
export function donenessChoices(basis: CardBasis): readonly Choice[] {
  const animal = animalOf(basis)
  const minimum = minimumFor({ animal }, basis.shoot.authority)
  const words = wordsFor(animal)
  const named = DONENESS_RANGES.filter((r) => words.includes(r.word))
  const same: Choice = ['same', `as done as filmed, about ${whole(basis.sliced)}`]
  return [
    ['card', `pulled as on the card, at ${formatTempBoth(basis.pull)}`],
    ...(isPoultry(animal) ? [] : [same]),
    ...named.map((r): Choice => [r.word, `${r.word.replace('-', ' ')}, about ${whole(levelOf(r))}`]),
    ['minimum', `the authority’s minimum: ${minimumWords(minimum)}`],
    ['core', 'another temperature'],
  ]
}

/** A card speaks for roasts of its own kind: from half as thick to 1.6 times. [estimate] */
const THICKNESS = { least: 0.5, most: 1.6 }
export const thicknessBounds = (basis: CardBasis) => {
  const thick = thicknessOf(cookOf(basis).roast)
  const half = (m: number) => metres(Math.round(m * 200) / 200)
  return { least: half(thick * THICKNESS.least), most: half(thick * THICKNESS.most) }
}

/** Below this no cook's word reaches; fish and pork have their own. [estimate] for fish */
const FISH_LEAST_C = 48
function coreBounds(basis: CardBasis): { least: Celsius; most: Celsius } {
  const cook = cookOf(basis)
  const animal = animalOf(basis)
  const cut = { animal }
  const first = DONENESS_RANGES.find((r) => wordsFor(animal).includes(r.word))
  const least = isPoultry(animal) ? minimumFor(cut).tempC : (first?.anyFromC ?? FISH_LEAST_C)
  const heat = Math.max(...cook.stages.map((s) => (s.do === 'roast' || s.do === 'sear' ? s.at : 0)))
  return { least: celsius(Math.ceil(least - 0.2)), most: celsius(Math.min(HIGHEST_CORE_C - 1, heat - 2)) }
}

type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly sentence: string }
const good = <T>(value: T): Read<T> => ({ ok: true, value })
const bad = (sentence: string): Read<never> => ({ ok: false, sentence })

function readThickness(written: string, basis: CardBasis): Read<Metres> {
  const read = readQuantity(written, 'length')
  if (!read.ok) return bad(read.sentence)
  const { least, most } = thicknessBounds(basis)
  if (read.si >= least && read.si <= most) return good(metres(read.si))
  const [from, to] = [least, most].map((m) => `${formatLength(m)} (${formatLength(m, 'us')})`)
  return bad(
    `${written.trim()} is another kind of roast: this card holds from ${from} to ${to}. Measure the thickest place as it lies.`,
  )
}
function readMass(written: string): Read<Kilograms | null> {
  if (written.trim() === '') return good(null)
  const read = readQuantity(written, 'mass')
  if (!read.ok) return bad(read.sentence)
  const inside = read.si >= ROAST_MASS.min && read.si <= ROAST_MASS.max
  return inside ? good(read.si as Kilograms) : bad(ROAST_MASS.sentence(written.trim(), read.si))
}
function readGoal({ done, core }: Filled, basis: CardBasis): Read<Goal> {
  const poultry = isPoultry(animalOf(basis))
  const range = DONENESS_RANGES.find((r) => r.word === done)
  if (range) return good({ middle: celsius(levelOf(range)), minimum: poultry })
  if (done === 'same') return good({ middle: basis.sliced, minimum: poultry })
  if (done !== 'core') return good({ middle: null, minimum: poultry || done === 'minimum' })
  const read = readQuantity(core, 'temperature')
  if (!read.ok) return bad(read.sentence)
  const { least, most } = coreBounds(basis)
  if (read.si >= least - 0.5 && read.si <= most) return good({ middle: celsius(read.si), minimum: poultry })
  const bounds = `Write one from ${formatTempBoth(least)} to ${formatTempBoth(most)}.`
  if (read.si > most) return bad(`${core.trim()} is more than the middle comes to. ${bounds}`)
  const why = poultry ? 'is below the authority’s minimum for poultry' : 'is too cold to serve'
  return bad(`${core.trim()} ${why}. ${bounds}`)
}
function readServe(written: string): Read<number | null> {
  if (written.trim() === '') return good(null)
  const [, h, min] = /^(\d{1,2})[:.](\d{2})$/.exec(typedClock(written).trim()) ?? []
  if (h === undefined || Number(h) > 23 || Number(min) > 59)
    return bad(`"${written.trim().slice(0, 20)}" is not a time of day. Write one such as "19:30".`)
  return good(Number(h) * 60 + Number(min))
}

/** What the reader wants, or what is wrong at each field (`/thickness`, `/weight`, `/core`, `/serve`). */
export function readWish(filled: Filled, basis: CardBasis): Result<Wish> {
  const problems: Problem[] = []
  const take = <T>(read: Read<T>, pointer: string): T | undefined => {
    if (read.ok) return read.value
    problems.push({ pointer, sentence: read.sentence })
    return undefined
  }
  const thickness = take(readThickness(filled.thickness, basis), '/thickness')
  const mass = take(readMass(filled.weight), '/weight')
  const goal = take(readGoal(filled, basis), '/core')
  const serveMin = take(readServe(filled.serve), '/serve')
  if (thickness === undefined || mass === undefined || goal === undefined || serveMin === undefined)
    return { ok: false, problems }
  const start = celsius(STARTS.find(([value]) => value === filled.start)?.[2] ?? STARTS[0][2])
  const cooker = cookerChoices(basis).find(([kind]) => kind === filled.cooker)?.[0] ?? cookOf(basis).cooker.kind
  return { ok: true, value: { thickness, mass, start, cooker: cooker as CookerKind, goal, serveMin } }
}
