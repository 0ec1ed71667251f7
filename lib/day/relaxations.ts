import type { Forecast } from '../model/forecast'
import { formatClock } from '../plan/clock'
import type { Shoot, Shot } from '../plan/shoot'
import { later, minutes, seconds } from '../units'
import type { FloatJob } from './float-job'
import type { MomentJob } from './moment-job'
import { type DayProblem, dayProblem } from './problem'
import { type Found, searchDay } from './search'
import { minutesText, ordinal } from './words'

/** Small searches, each with one thing changed: enough to see whether it would save the shot. */
const PROBE_SWEEPS = 12
const MOST_PROBES = 14
type Relaxation = { readonly words: string; readonly shoot: Shoot; readonly mayCost: boolean }
type Context = { readonly seed: number; readonly forecasts: ReadonlyMap<string, Forecast> }

/** For each dropped shot, by weight, the first single change that gives it a place without costing another its own. */
export function whatWouldSave(
  problem: DayProblem,
  found: Found,
  lost: readonly (MomentJob | FloatJob)[],
  context: Context,
): string[] {
  let probes = 0
  const before = lost.reduce((sum, job) => sum + job.weight, 0)
  return lost.map((job) => {
    for (const relaxed of relaxationsFor(problem.shoot, job, found, problem)) {
      if (probes++ >= MOST_PROBES) break
      if (saves(relaxed, job, before, context)) return relaxed.words
    }
    return fallback(job)
  })
}

function saves({ shoot, mayCost }: Relaxation, job: MomentJob | FloatJob, before: number, context: Context): boolean {
  const problem = dayProblem(shoot, context.forecasts)
  const { draft } = searchDay(problem, { seed: context.seed, sweeps: PROBE_SWEEPS })
  const lost = [
    ...problem.moments.filter((_, i) => !draft.moments[i]),
    ...problem.floats.filter((_, i) => !draft.floats[i]),
  ]
  if (lost.some((j) => j.shot.id === job.shot.id)) return false
  if (problem.unfit.some((u) => u.shot.id === job.shot.id)) return false
  return mayCost || lost.reduce((sum, j) => sum + j.weight, 0) <= before - job.weight
}

const fallback = (job: MomentJob | FloatJob) =>
  job.shot.state === 'sliced' || job.shot.state === 'hot' || job.shot.state === 'rested'
    ? 'A second roast, kept for this shot.'
    : 'No single change that was tried saves it: move it to another day, or drop two of the shots around it.'

function relaxationsFor(shoot: Shoot, job: MomentJob | FloatJob, found: Found, problem: DayProblem): Relaxation[] {
  return [
    ...shorter(shoot, job.shot),
    ...morePeople(shoot, job.shot),
    ...longerDay(shoot, found, problem),
    ...higher(shoot, job.shot),
  ]
}

const withShot = (shoot: Shoot, id: string, change: Partial<Shot>): Shoot => ({
  ...shoot,
  shots: (shoot.shots ?? []).map((s) => (s.id === id ? { ...s, ...change } : s)),
})

/** Half the roll, or half of what is wanted after the moment; then half the setup. */
function shorter(shoot: Shoot, shot: Shot): Relaxation[] {
  const half = (time: number) => minutes(Math.max(1, Math.floor(time / 120)))
  const found: Relaxation[] = []
  if (shot.at?.after && shot.at.after >= 120) {
    const after = half(shot.at.after)
    const words = `Roll only ${minutesText(after / 60)} after the moment.`
    found.push({ words, shoot: withShot(shoot, shot.id, { at: { ...shot.at, after } }), mayCost: false })
  }
  if (shot.roll && shot.roll >= 120) {
    const roll = half(shot.roll)
    const words = `Roll ${minutesText(roll / 60)} instead of ${minutesText(shot.roll / 60)}.`
    found.push({ words, shoot: withShot(shoot, shot.id, { roll }), mayCost: false })
  }
  if (shot.setup && shot.setup >= 240) {
    const setup = half(shot.setup)
    const words = `Set up in ${minutesText(setup / 60)} instead of ${minutesText(shot.setup / 60)}.`
    found.push({ words, shoot: withShot(shoot, shot.id, { setup }), mayCost: false })
  }
  return found
}

/** One more person for each role it needs; an operator brings a camera. */
function morePeople(shoot: Shoot, shot: Shot): Relaxation[] {
  const people = shoot.people ?? []
  const cameras = shoot.cameras ?? []
  const roles = new Set((shot.needs ?? []).flatMap((n) => people.find((p) => p.id === n)?.roles ?? [n]))
  return [...roles].map((role) => {
    const count = people.filter((p) => p.roles.includes(role)).length
    const more: Shoot = { ...shoot, people: [...people, { id: 'one-more', roles: [role] }] }
    if (role !== 'camera')
      return { words: `A ${ordinal(count + 1)} ${role}.`, shoot: anybody(more, shot), mayCost: false }
    const withCamera = { ...more, cameras: [...cameras, { id: 'one-more' }] }
    return {
      words: `A ${ordinal(count + 1)} operator with a camera.`,
      shoot: anybody(withCamera, shot),
      mayCost: false,
    }
  })
}
/** A need that names a person or a camera takes anybody like it. */
function anybody(shoot: Shoot, shot: Shot): Shoot {
  const needs = (shot.needs ?? []).map((n) => shoot.people?.find((p) => p.id === n)?.roles[0] ?? n)
  return withShot(shoot, shot.id, { needs, camera: undefined })
}

function longerDay(shoot: Shoot, found: Found, { clock }: DayProblem): Relaxation[] {
  const { day } = shoot
  const moved = (minute: number) => formatClock(clock.toInstant(minute), shoot.zone)
  const options: Relaxation[] = []
  if (day?.wrap !== undefined) {
    const wrap = formatClock(later(clock.toInstant(clock.fromClock(day.wrap)), seconds(3600)), shoot.zone)
    options.push({
      words: `Wrap at ${wrap} instead of ${day.wrap}.`,
      shoot: { ...shoot, day: { ...day, wrap } },
      mayCost: false,
    })
  }
  if (day?.call !== undefined) {
    const call = moved(found.draft.crewCall - 60)
    options.push({
      words: `Call the crew at ${call} instead of ${day.call}.`,
      shoot: { ...shoot, day: { ...day, call } },
      mayCost: false,
    })
  }
  return options
}

function higher(shoot: Shoot, shot: Shot): Relaxation[] {
  if (shot.priority === 'must') return []
  const words = 'Make it a must: a shot of less weight then gives way.'
  return [{ words, shoot: withShot(shoot, shot.id, { priority: 'must' }), mayCost: true }]
}
