import type { Forecast } from '../model/forecast'
import { formatClock } from '../plan/clock'
import type { Draft } from './draft'
import type { FloatJob } from './float-job'
import type { Dropped } from './layout'
import type { MomentJob, Unfit } from './moment-job'
import { type DayProblem, minuteOf } from './problem'
import { whatWouldSave } from './relaxations'
import { RULES } from './rules'
import type { Found } from './search'
import { capital, comes, cooksOf, listed, momentName, quoted } from './words'

/** Every shot that found no place, with the reason and the one change that would save it. */
export function droppedOf(
  problem: DayProblem,
  found: Found,
  seed: number,
  forecasts: ReadonlyMap<string, Forecast>,
): Dropped[] {
  const { draft } = found
  const lost = [
    ...problem.moments.flatMap((job, i) => (draft.moments[i] ? [] : [{ job, why: whyMoment(problem, draft, job, i) }])),
    ...problem.floats.flatMap((job, i) => (draft.floats[i] ? [] : [{ job, why: whyFloat(problem, draft, job) }])),
  ].sort((a, b) => b.job.weight - a.job.weight)
  const saves = whatWouldSave(
    problem,
    found,
    lost.map((l) => l.job),
    { seed, forecasts },
  )
  return [
    ...problem.unfit.map((u) => unfitDrop(problem, u)),
    ...lost.map(({ job, why }, i) => ({ id: job.shot.id, why, wouldSave: saves[i] as string })),
  ]
}

function unfitDrop({ crew }: DayProblem, { shot, reason, share }: Unfit): Dropped {
  const moment = shot.at?.moment
  if (reason === 'nobody') return nobodyDrop(crew, shot)
  if (reason === 'never-comes' && moment)
    return {
      id: shot.id,
      why: `${capital(momentName(moment))} ${comes(moment)} in only ${cooksOf(share)}.`,
      wouldSave: 'A hotter cooker, or a lower temperature at the probe.',
    }
  return {
    id: shot.id,
    why: `This cook has no such moment${moment ? ` as ${momentName(moment)}` : ''}.`,
    wouldSave: 'Put the shot at another moment, or give the cook the stage that brings this one.',
  }
}

function nobodyDrop(crew: DayProblem['crew'], shot: Unfit['shot']): Dropped {
  const needs = shot.needs ?? []
  const cameras = needs.filter((n) => n === 'camera').length
  const missing = needs.find((n) => !crew.people.some((p, i) => p === n || crew.roles[i]?.includes(n)))
  if (missing !== undefined)
    return {
      id: shot.id,
      why: `Nobody on this shoot is "${missing}".`,
      wouldSave: `A person with the role "${missing}".`,
    }
  if (cameras > crew.cameras.length)
    return {
      id: shot.id,
      why: `It needs ${cameras} cameras and there are ${crew.cameras.length}.`,
      wouldSave: `${cameras - crew.cameras.length} more camera${cameras - crew.cameras.length > 1 ? 's' : ''}.`,
    }
  return {
    id: shot.id,
    why: `It needs ${listed(needs)}, and there are too few different people for that.`,
    wouldSave: 'One more person with one of these roles.',
  }
}

/** The placed moment that stands most often in its way, or the end of the day. */
function whyMoment(problem: DayProblem, draft: Draft, job: MomentJob, i: number): string {
  const { clock, shoot, clashes, moments } = problem
  const at = (draft.meatOn[job.cook] as number) + job.likely
  const strikeFrom = problem.wrapLimit === null ? Number.POSITIVE_INFINITY : problem.wrapLimit - RULES.strikeMin
  if (at + job.after > strikeFrom)
    return `${capital(momentName(job.moment))} ${comes(job.moment)} likely at ${formatClock(clock.toInstant(at), shoot.zone)}, too late to strike by ${shoot.day?.wrap}.`
  const rivals = moments.flatMap((other, j) => {
    const place = draft.moments[j]
    if (!place) return []
    const mode = other.modes.indexOf(place.mode)
    const share = Math.min(...job.modes.map((_, m) => clashes.share(j, mode, i, m, draft.meatOn)))
    return [{ other, share }]
  })
  const worst = rivals.sort((a, b) => b.share - a.share)[0]
  if (!worst || worst.share === 0) return 'However it is staffed, another moment takes one of its people or its camera.'
  return `In ${cooksOf(worst.share)} it comes while ${quoted(worst.other.shot.title)} still holds whoever could do it.`
}

/** What fills the only time in which it could stand. */
function whyFloat(problem: DayProblem, draft: Draft, job: FloatJob): string {
  const { clock, shoot } = problem
  const time = (minute: number) => formatClock(clock.toInstant(minute), shoot.zone)
  if (job.windows.length === 0) return `There is no ${job.shot.light?.replaceAll('-', ' ')} on this day at this place.`
  const [lo, hi] = spanOf(problem, draft, job)
  const length = job.setup + job.roll
  if (!Number.isFinite(hi)) return 'The moment it waits for never comes in this cook.'
  if (hi - lo < job.roll)
    return hi <= lo
      ? `There is no time in which ${describe(job)}.`
      : `Only ${Math.max(0, Math.floor(hi - lo))} min remain from ${time(lo)} to ${time(hi)}, and it rolls ${job.roll} min with its handles.`
  const rivals = rivalsOf(problem, draft, job, lo, hi)
  const busy =
    rivals.length > 0 ? `: ${listed(rivals.slice(0, 3).map(quoted))} ${rivals.length > 1 ? 'hold' : 'holds'} them` : ''
  return `From ${time(lo)} to ${time(hi)} nobody it needs has ${length} min free${busy}.`
}
const describe = (job: FloatJob) =>
  job.shot.state ? `the roast is ${job.shot.state} as this shot asks` : 'this shot could stand'

function spanOf(problem: DayProblem, draft: Draft, job: FloatJob): [number, number] {
  const at = (edges: readonly { base: number; likely: number; sample: Float64Array }[]) =>
    edges.map((e) => minuteOf(e, draft.meatOn))
  if (job.span) return at(job.span) as [number, number]
  const limit = problem.wrapLimit === null ? draft.wrap - RULES.strikeMin : problem.wrapLimit - RULES.strikeMin
  const before = job.after.flatMap((i) => draft.floats[i]?.end ?? [])
  const windows = job.windows.map((w): [number, number] => [
    Math.max(draft.crewCall + job.setup, ...at(w.lo), ...before),
    Math.min(limit, ...at(w.hi)),
  ])
  return windows.sort((a, b) => b[1] - b[0] - (a[1] - a[0]))[0] ?? [0, 0]
}

function rivalsOf(problem: DayProblem, draft: Draft, job: FloatJob, lo: number, hi: number): string[] {
  const wanted = new Set(job.modes.flatMap((m) => [...m.operators, ...m.hands]))
  const cameras = new Set(job.modes.flatMap((m) => m.cameras))
  const placed = [
    ...problem.moments.map((j, i) => ({ shot: j.shot, place: draft.moments[i] })),
    ...problem.floats.map((j, i) => ({ shot: j.shot, place: draft.floats[i] })),
  ]
  return placed.flatMap(({ shot, place }) => {
    if (!place || place.end <= lo || place.setupStart >= hi) return []
    const { operators, hands, cameras: used } = place.mode
    const meets = [...operators, ...hands].some((p) => wanted.has(p)) || used.some((c) => cameras.has(c))
    return meets ? [shot.title] : []
  })
}
