import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { meet } from './crew'
import type { DayForecast } from './day-forecast'
import { within } from './hours'
import type { Layout } from './layout'
import type { MomentJob } from './moment-job'
import { type DayProblem, dayProblem } from './problem'
import { listed, quoted } from './words'

/** The smallest set of shots at moments that cannot all be had, one of them dropped; without any one of them the others can. */
export interface RuleCore {
  readonly dropped: string
  readonly shots: readonly string[]
  /** People and cameras that they all hang on. */
  readonly short: readonly string[]
  readonly sentence: string
}
/** Two that meet in more cooks than this cost more than leaving one out. */
const MEET_AT_MOST = 0.5
/** Staffings tried for one question; a day of 80 shots stays far below. */
const MOST_TRIED = 20_000

/** One core for every dropped shot at a moment whose rivals, and not the clock, are the reason. */
export function ruleCores(shoot: Shoot, forecasts: ReadonlyMap<string, DayForecast>, layout: Layout): RuleCore[] {
  const on = layout.meatOn[shoot.cooks[0]?.id ?? '']
  const bare = dayProblem(shoot, forecasts)
  const problem = on === undefined ? bare : dayProblem(shoot, forecasts, bare.clock.fromInstant(fromIso(on)))
  const meatOn = problem.cooks.map(({ id }) => problem.clock.fromInstant(fromIso(layout.meatOn[id] ?? layout.start)))
  const placed = new Set(layout.shots.map(({ id }) => id))
  const indexed = problem.moments.map((job, i) => ({ job, i }))
  const standing = indexed.filter(({ job }) => placed.has(job.shot.id)).map(({ i }) => i)
  const dropped = indexed.filter(({ job }) => layout.dropped.some((d) => d.id === job.shot.id))
  return dropped.flatMap(({ i }) => {
    const core = smallestCore(problem, meatOn, i, standing)
    return core ? [told(problem, i, core)] : []
  })
}

/** Leaves out one rival after another as long as the rest still cannot be had. */
function smallestCore(problem: DayProblem, meatOn: readonly number[], dropped: number, rivals: readonly number[]) {
  let core = [dropped, ...rivals]
  if (canAll(problem, meatOn, core) !== false) return null
  for (const rival of rivals) {
    const without = core.filter((i) => i !== rival)
    if (canAll(problem, meatOn, without) === false) core = without
  }
  return core
}

/** Whether all of them can be staffed; undefined where that is too much to try. */
function canAll(problem: DayProblem, meatOn: readonly number[], jobs: readonly number[]): boolean | undefined {
  const modes = jobs.map((i) => modesThere(problem, meatOn, i))
  const chosen: number[] = []
  let tried = 0
  const fill = (depth: number): boolean => {
    if (depth === jobs.length) return true
    return (modes[depth] as number[]).some((mode) => {
      if (tried++ > MOST_TRIED) return false
      const fits = chosen.every((other, d) => shareOf(d, other, depth, mode) <= MEET_AT_MOST)
      if (!fits) return false
      chosen.push(mode)
      if (fill(depth + 1)) return true
      chosen.pop()
      return false
    })
  }
  const shareOf = (a: number, modeA: number, b: number, modeB: number) =>
    problem.clashes.share(jobs[a] as number, modeA, jobs[b] as number, modeB, meatOn)
  const found = fill(0)
  return !found && tried > MOST_TRIED ? undefined : found
}

function modesThere({ moments, hours }: DayProblem, meatOn: readonly number[], i: number): number[] {
  const job = moments[i] as MomentJob
  const at = (meatOn[job.cook] as number) + job.likely
  return job.modes.flatMap(({ operators, hands }, mode) =>
    [...operators, ...hands].every((p) =>
      within(hours[p] as (typeof hours)[number], at - job.before - job.setup, at + job.after),
    )
      ? [mode]
      : [],
  )
}

function told({ moments, crew }: DayProblem, dropped: number, core: readonly number[]): RuleCore {
  const jobs = core.map((i) => moments[i] as MomentJob)
  const shots = jobs.toSorted((a, b) => a.likely - b.likely).map(({ shot }) => shot)
  const names = [...crew.people, ...crew.cameras.map((c) => `camera ${c}`)]
  const short = names.filter((_, bit) =>
    jobs.every((job) => job.modes.every((mode) => meet(mode.rollMask, bitMask(bit, crew.words)))),
  )
  const titles = listed(shots.map(({ title }) => quoted(title)))
  const why = short.length > 0 ? `: each needs ${listed(short)}` : ' with the people and cameras there are'
  const all = shots.length === 1 ? 'cannot be had' : `cannot ${shots.length === 2 ? 'both' : 'all'} be had`
  const but = shots.length > 1 ? '; without any one of them the others can' : ''
  return {
    dropped: (moments[dropped] as MomentJob).shot.id,
    shots: shots.map(({ id }) => id),
    short,
    sentence: `${titles} ${all}${why}${but}.`,
  }
}
const bitMask = (bit: number, words: number) =>
  Array.from({ length: words }, (_, w) => (Math.floor(bit / 31) === w ? 1 << (bit % 31) : 0))
