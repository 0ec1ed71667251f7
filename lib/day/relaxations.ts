import { formatClock } from '../plan/clock'
import type { Shoot, Shot } from '../plan/shoot'
import { later, minutes, seconds } from '../units'
import type { DayForecast } from './day-forecast'
import type { FloatJob } from './float-job'
import type { MomentJob } from './moment-job'
import { type DayProblem, dayProblem } from './problem'
import { type Found, searchDay } from './search'
import { minutesText, ordinal } from './words'

/** Small searches, each with one thing changed: enough to see what it would save. */
const PROBE_SWEEPS = 15
const MOST_PROBES = 16
type Relaxation = { readonly words: string; readonly shoot: Shoot; readonly mayCost?: boolean }
/** `sweeps` of the search itself: a day laid out in haste is not probed. */
type Context = { readonly seed: number; readonly sweeps: number; readonly forecasts: ReadonlyMap<string, DayForecast> }
type Lost = MomentJob | FloatJob

/** For each dropped shot, by weight, the first single change that gives it a place without costing another its own. */
export function whatWouldSave(problem: DayProblem, found: Found, lost: readonly Lost[], context: Context): string[] {
  const before = lost.reduce((sum, job) => sum + job.weight, 0)
  const saved = new Map<string, ReadonlySet<string>>()
  /** A change of the whole day is tried once, and told of every shot it saves. */
  const saves = (relaxed: Relaxation, job: Lost): boolean => {
    if (!saved.has(relaxed.words) && saved.size < MOST_PROBES && context.sweeps >= PROBE_SWEEPS)
      saved.set(relaxed.words, savedBy(relaxed, lost, before, context))
    return saved.get(relaxed.words)?.has(job.shot.id) ?? false
  }
  return lost.map((job) => {
    const tried = relaxationsFor(problem.shoot, job.shot, found, problem)
    return tried.find((relaxed) => saves(relaxed, job))?.words ?? fallback(job)
  })
}

function savedBy({ shoot, mayCost }: Relaxation, lost: readonly Lost[], before: number, context: Context): Set<string> {
  const problem = dayProblem(shoot, context.forecasts)
  const { draft } = searchDay(problem, { seed: context.seed, sweeps: PROBE_SWEEPS })
  const still = [
    ...problem.moments.filter((_, i) => !draft.moments[i]),
    ...problem.floats.filter((_, i) => !draft.floats[i]),
  ]
  const out = new Set([...still.map((j) => j.shot.id), ...problem.unfit.map((u) => u.shot.id)])
  const after = still.reduce((sum, j) => sum + j.weight, 0)
  const gained = lost.filter((job) => !out.has(job.shot.id) && (mayCost || after <= before - job.weight))
  return new Set(gained.map((job) => job.shot.id))
}

const fallback = ({ shot }: Lost) =>
  shot.state === 'sliced' || shot.state === 'hot' || shot.state === 'rested'
    ? 'A second roast, kept for this shot.'
    : 'No single change that was tried saves it: take it to another day, or give up two of the shots around it.'

function relaxationsFor(shoot: Shoot, shot: Shot, found: Found, problem: DayProblem): Relaxation[] {
  return [
    ...eitherLid(shoot, shot),
    ...shorter(shoot, shot),
    ...longerDay(shoot, found, problem),
    ...moreCameras(shoot, shot),
    ...morePeople(shoot, shot),
    ...higher(shoot, shot),
  ]
}

const withShot = (shoot: Shoot, id: string, change: Partial<Shot>): Shoot => ({
  ...shoot,
  shots: (shoot.shots ?? []).map((s) => (s.id === id ? { ...s, ...change } : s)),
})

function eitherLid(shoot: Shoot, shot: Shot): Relaxation[] {
  if (shot.lid === undefined || shot.lid === 'any') return []
  const words = `Shoot "${shot.title}" with the lid open or shut, as it comes.`
  return [{ words, shoot: withShot(shoot, shot.id, { lid: 'any' }) }]
}

/** Half the roll, or half of what is wanted after the moment. */
function shorter(shoot: Shoot, shot: Shot): Relaxation[] {
  const half = (time: number) => minutes(Math.max(1, Math.floor(time / 120)))
  const found: Relaxation[] = []
  if (shot.at?.after && shot.at.after >= 120) {
    const after = half(shot.at.after)
    const words = `Roll "${shot.title}" only ${minutesText(after / 60)} after the moment.`
    found.push({ words, shoot: withShot(shoot, shot.id, { at: { ...shot.at, after } }) })
  }
  if (!shot.at && shot.roll && shot.roll >= 120) {
    const roll = half(shot.roll)
    const words = `Roll "${shot.title}" for ${minutesText(roll / 60)} instead of ${minutesText(shot.roll / 60)}.`
    found.push({ words, shoot: withShot(shoot, shot.id, { roll }) })
  }
  return found
}

function longerDay(shoot: Shoot, found: Found, { clock }: DayProblem): Relaxation[] {
  const { day } = shoot
  const at = (minute: number) => formatClock(clock.toInstant(minute), shoot.zone)
  const options: Relaxation[] = []
  if (day?.wrap !== undefined) {
    const wrap = formatClock(later(clock.toInstant(clock.fromClock(day.wrap)), seconds(3600)), shoot.zone)
    options.push({ words: `Wrap at ${wrap} instead of ${day.wrap}.`, shoot: { ...shoot, day: { ...day, wrap } } })
  }
  if (day?.call !== undefined) {
    const call = at(found.draft.crewCall - 60)
    options.push({
      words: `Call the crew at ${call} instead of ${day.call}.`,
      shoot: { ...shoot, day: { ...day, call } },
    })
  }
  return options
}

/** A locked-off camera wants one more camera and nobody behind it. */
function moreCameras(shoot: Shoot, shot: Shot): Relaxation[] {
  if (!shot.locked) return []
  const cameras = [...(shoot.cameras ?? []), { id: 'one-more' }]
  const words = `A ${ordinal(cameras.length)} camera for "${shot.title}".`
  return [{ words, shoot: withShot({ ...shoot, cameras }, shot.id, { camera: undefined }) }]
}

/** One more person for each role it needs; an operator brings a camera. */
function morePeople(shoot: Shoot, shot: Shot): Relaxation[] {
  const people = shoot.people ?? []
  const named = (need: string) => people.find((p) => p.id === need && !people.some((q) => q.roles.includes(need)))
  const roles = new Set((shot.needs ?? []).flatMap((need) => named(need)?.roles[0] ?? need))
  return [...roles].map((role) => {
    const count = people.filter((p) => p.roles.includes(role)).length
    const more: Shoot = { ...shoot, people: [...people, { id: 'one-more', roles: [role] }] }
    const behind = role === 'camera' ? { ...more, cameras: [...(shoot.cameras ?? []), { id: 'one-more' }] } : more
    const words =
      role === 'camera' ? `A ${ordinal(count + 1)} operator with a camera` : `A ${ordinal(count + 1)} ${role}`
    const fixed = shot.camera !== undefined || (shot.needs ?? []).some((n) => named(n) !== undefined)
    if (!fixed) return { words: `${words}.`, shoot: behind }
    const needs = (shot.needs ?? []).map((n) => named(n)?.roles[0] ?? n)
    return { words: `${words} for "${shot.title}".`, shoot: withShot(behind, shot.id, { needs, camera: undefined }) }
  })
}

function higher(shoot: Shoot, shot: Shot): Relaxation[] {
  if (shot.priority === 'must') return []
  const words = `Make "${shot.title}" a must: a shot of less weight then gives way.`
  return [{ words, shoot: withShot(shoot, shot.id, { priority: 'must' }), mayCost: true }]
}
