import { MOMENT_IDS } from '../model/moment-ids'
import { chooseRule, ruleTimes } from './call-rule'
import type { Mode } from './crew'
import type { Draft } from './draft'
import { HoldRisk, tentativeSpan } from './hold-risk'
import { handleMin, type MomentJob } from './moment-job'
import type { DayProblem } from './problem'
import { RULES } from './rules'

/**
 * The same day with its calls chosen for a known staffing: a crew that still stands at the place for an earlier moment
 * needs no release and no fresh setup, so it can be called later, and the early members no longer force the clock.
 */
export function refineCalls(problem: DayProblem, draft: Draft): DayProblem {
  const modes = draft.moments.map((place) => place?.mode ?? null)
  const moments = problem.moments.map((job, k) => refined(problem, job, k, modes))
  return { ...problem, moments, tentative: moments.map(tentativeSpan), risk: new HoldRisk(moments, problem.cooks) }
}

function refined(problem: DayProblem, job: MomentJob, k: number, modes: readonly (Mode | null)[]): MomentJob {
  const mode = modes[k]
  const cook = problem.cooks[job.cook]
  if (!mode || !cook) return job
  const held = heldUntil(problem.moments, modes, k, mode)
  const lead = { release: RULES.releaseMin, setup: job.standbySetup, before: job.before + handleMin, held }
  const rule = chooseRule(cook, job.moment, lead)
  return rule ? { ...job, rule, called: ruleTimes(cook, rule) } : job
}

/** By member: until when everybody and everything of shot k stands at its place for an earlier moment; else -Infinity. */
function heldUntil(jobs: readonly MomentJob[], modes: readonly (Mode | null)[], k: number, mode: Mode): Float64Array {
  const job = jobs[k] as MomentJob
  const earlier = jobs.flatMap((other, j) => {
    const theirs = modes[j]
    return theirs && j !== k && other.cook === job.cook ? [{ other, theirs }] : []
  })
  const rank = ({ moment }: MomentJob) => MOMENT_IDS.indexOf(moment)
  const comesFirst = (other: MomentJob, t: number, m: number) =>
    (other.times[m] as number) < t || (other.times[m] === t && rank(other) < rank(job))
  return job.times.map((t, m) => {
    const last = (test: (m: Mode) => boolean) => {
      const before = earlier.filter(
        ({ other, theirs }) => comesFirst(other, t, m) && touches(theirs, mode) && test(theirs),
      )
      return before.reduce<MomentJob | null>(
        (found, { other }) => (!found || (other.times[m] as number) >= (found.times[m] as number) ? other : found),
        null,
      )
    }
    const until = (found: MomentJob | null) =>
      found && found.place === job.place ? (found.times[m] as number) + found.after : Number.NEGATIVE_INFINITY
    const stand = mode.cameras.length > 0 ? until(last((theirs) => sameStand(theirs, mode))) : Number.POSITIVE_INFINITY
    const hands = mode.hands.map((p) =>
      until(last((theirs) => theirs.hands.includes(p) || theirs.operators.includes(p))),
    )
    const all = Math.min(stand, ...hands)
    return Number.isFinite(all) ? all : Number.NEGATIVE_INFINITY
  })
}
const touches = (a: Mode, b: Mode) =>
  a.cameras.some((c) => b.cameras.includes(c)) ||
  [...a.operators, ...a.hands].some((p) => b.operators.includes(p) || b.hands.includes(p))
export const sameStand = (a: Mode, b: Mode) =>
  b.cameras.every((c) => a.cameras.includes(c)) && b.operators.every((p) => a.operators.includes(p))
