import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { newBoard } from '../day/board'
import type { DayForecast } from '../day/day-forecast'
import type { Draft, Genes } from '../day/draft'
import { type DayProblem, dayProblem } from '../day/problem'
import { PRICES, RULES } from '../day/rules'
import { layDraft } from '../day/scheduler'
import { toCookPlan } from '../plan/cook-plan'
import { parseShoot } from '../plan/parse'
import type { Shoot, ShootDocument } from '../plan/shoot'
import { type RandomDay, realisticDay } from './realistic-day'
import { forecastFrom, type StandIn } from './stand-in-forecast'

const FOLDER = 'tests/fixtures/days'

/** The least cost known for a day. It holds for the prices it was found at. */
export interface Best {
  readonly cost: number
  readonly prices: string
  /** What was spent on finding it, s of one core. */
  readonly searchedS: number
  /** The day itself: whoever doubts its cost lays it out again. */
  readonly genes?: Genes
}
export interface CommittedDay extends RandomDay {
  readonly shots: number
  readonly seed: number
  readonly best: Best
}
export interface OpenDay {
  readonly shoot: Shoot
  readonly forecasts: ReadonlyMap<string, DayForecast>
  readonly problem: DayProblem
}

const fileOf = (shots: number, seed: number) =>
  path.join(FOLDER, `${shots}-shots-${String(seed).padStart(2, '0')}.json`)

/** Changes with every price or rule of the search: a best value found at others says nothing. */
export const pricesNow = (): string => {
  let hash = 0
  for (const letter of JSON.stringify([PRICES, RULES])) hash = (Math.imul(hash, 31) + letter.charCodeAt(0)) | 0
  return (hash >>> 0).toString(16)
}

export function readDay(shots: number, seed: number): CommittedDay | null {
  const file = fileOf(shots, seed)
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as CommittedDay) : null
}
export const seedsOf = (shots: number): number[] =>
  readdirSync(FOLDER)
    .flatMap((name) => new RegExp(`^${shots}-shots-(\\d+)\\.json$`).exec(name)?.[1] ?? [])
    .map(Number)
    .sort((a, b) => a - b)

/** The day as it was committed; a new one is drawn from its seed. */
export const dayOf = (shots: number, seed: number): RandomDay => readDay(shots, seed) ?? realisticDay(shots, seed)

/** The best day known, costed as the rules are now; null where nothing lays it out any more. */
export function bestOf(problem: DayProblem, { genes, searchedS }: Best): (Best & { readonly draft: Draft }) | null {
  if (!genes || genes.momentMode.length !== problem.moments.length || genes.order.length !== problem.floats.length)
    return null
  const draft = layDraft(newBoard(problem), genes)
  return { cost: draft.cost, prices: pricesNow(), searchedS, genes, draft }
}

export function writeDay(day: CommittedDay): void {
  writeFileSync(fileOf(day.shots, day.seed), `${JSON.stringify(day)}\n`)
}

export function openDay({ document, cooks }: RandomDay): OpenDay {
  const shoot = parsed(document)
  const forecasts = new Map(
    shoot.cooks.map((c) => [c.id, forecastFrom(toCookPlan(shoot, c), cooks[c.id] as StandIn)] as const),
  )
  return { shoot, forecasts, problem: dayProblem(shoot, forecasts) }
}

export function parsed(document: ShootDocument): Shoot {
  const read = parseShoot(document)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.pointer}: ${p.sentence}`).join('\n'))
  return read.value
}

/** What may be dropped, in points: all but the musts. */
export const droppableWeight = ({ moments, floats }: DayProblem): number =>
  [...moments, ...floats].reduce((sum, job) => sum + (job.shot.priority === 'must' ? 0 : job.weight), 0)

/** How much more a day costs than another, as a share of what may be dropped, in per cent. */
export const gapPct = (problem: DayProblem, cost: number, best: number): number =>
  (100 * (cost - best)) / droppableWeight(problem)
