import { formatClock } from '../plan/clock'
import { lidsOppose } from './clash'
import type { DayForecast } from './day-forecast'
import type { Draft } from './draft'
import { ALL_DAY, within } from './hours'
import type { Dropped } from './layout'
import { handleMin, type MomentJob, type Unfit } from './moment-job'
import type { DayProblem } from './problem'
import { type Saving, whatWouldSave } from './relaxations'
import { RULES } from './rules'
import type { Found } from './search'
import { whyFloat } from './why-float'
import { capital, comes, cooksOf, listed, momentName, quoted } from './words'

/** Every shot that found no place, with the reason and the one change that would save it. */
export function droppedOf(
  problem: DayProblem,
  found: Found,
  context: { readonly seed: number; readonly sweeps: number; readonly forecasts: ReadonlyMap<string, DayForecast> },
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
    context,
  )
  return [
    ...problem.unfit.map((u) => unfitDrop(problem, u)),
    ...lost.map(({ job, why }, i): Dropped => {
      const { words, edits, price } = saves[i] as Saving
      return { id: job.shot.id, why, wouldSave: words, ...(edits ? { edits } : {}), ...(price ? { price } : {}) }
    }),
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
  const strikeFrom =
    problem.wrapLimit === null ? Number.POSITIVE_INFINITY : problem.wrapLimit + problem.overtimeMin - RULES.strikeMin
  if (at + job.after > strikeFrom)
    return `${capital(momentName(job.moment))} ${comes(job.moment)} likely at ${formatClock(clock.toInstant(at), shoot.zone)}, too late to strike by ${shoot.day?.wrap}.`
  const begins = at - job.before - handleMin - job.standbySetup
  const there = (p: number) => within(problem.hours[p] ?? ALL_DAY, begins, at + job.after + handleMin)
  if (job.modes.every((mode) => ![...mode.operators, ...mode.hands].every(there)))
    return `${capital(momentName(job.moment))} ${comes(job.moment)} likely at ${formatClock(clock.toInstant(at), shoot.zone)}, outside the hours of those who could shoot it.`
  const rivals = moments.flatMap((other, j) => {
    const place = draft.moments[j]
    if (!place) return []
    const mode = other.modes.indexOf(place.mode)
    const share = Math.min(...job.modes.map((_, m) => clashes.share(j, mode, i, m, draft.meatOn)))
    return [{ other, share }]
  })
  const worst = rivals.sort((a, b) => b.share - a.share)[0]
  if (!worst || worst.share === 0) return 'However it is staffed, another moment takes one of its people or its camera.'
  if (lidsOppose(job, worst.other))
    return `It wants the lid ${job.shot.lid}, and ${quoted(worst.other.shot.title)} has it ${worst.other.shot.lid} at the same time in ${cooksOf(worst.share)}.`
  return `In ${cooksOf(worst.share)} it comes while ${quoted(worst.other.shot.title)} still holds whoever could do it.`
}
