/** What somebody should know of a forecast, in sentences. Paths are JSON pointers into the cook. */
import type { Warning } from '../refusals'
import { formatDuration, formatShare, formatTemp, seconds } from '../units'
import type { CookPlan, Stage } from './cook'
import { COOKERS } from './cooker'
import { type Course, leadTooWeak, needsFire, probeOf, searOf } from './course'
import { fireWarnings, WORTH_TELLING } from './fire-warnings'
import type { Note, Run } from './simulate'
import { LONGEST_S, SEAR_NEAR_K } from './simulate'

export function warningsOf(plan: CookPlan, course: Course, runs: readonly Run[]): Warning[] {
  return [
    ...fromPlan(plan, course),
    ...unfinished(plan, course, runs),
    ...lateTurn(plan, course, runs),
    ...fromRuns(plan, runs),
    ...fireWarnings(plan, course, runs),
  ]
}

const indexOf = (plan: CookPlan, wanted: (stage: Stage) => boolean) =>
  plan.stages.reduce((found, stage, i) => (wanted(stage) ? i : found), -1)

function fromPlan(plan: CookPlan, course: Course): Warning[] {
  const warnings: Warning[] = []
  plan.stages.forEach((stage, i) => {
    if (stage.do === 'preheat' || stage.do === 'rest') return
    const { at } = stage
    if (at === undefined) return
    const hottest = COOKERS[plan.cooker.kind].hottestC
    if (needsFire(stage) && !(stage.do === 'sear' && stage.over) && at > hottest)
      warnings.push({
        code: 'hotter-than-cooker',
        path: `/stages/${i}/at`,
        sentence: `This cooker reaches about ${hottest} °C; ${formatTemp(at)} is taken as that.`,
      })
    if ('core' in stage.until && stage.do !== 'hold' && stage.until.core >= at)
      warnings.push({
        code: 'target-above-cooker',
        path: `/stages/${i}/until/core`,
        sentence: `The core cannot reach ${formatTemp(stage.until.core)} in a cooker at ${formatTemp(at)}: raise the cooker or lower the target.`,
      })
  })
  const sear = searOf(plan)
  const lead = probeOf(plan)?.lead
  if (leadTooWeak(plan) && sear && lead !== undefined)
    warnings.push({
      code: 'probe-out-for-sear',
      path: `/stages/${plan.stages.indexOf(sear)}`,
      sentence: `The sear at ${formatTemp(sear.at)} is hotter than the probe's cable stands (${formatTemp(lead)}): the probe comes out at pull, the sear goes by time${course.searForS === undefined ? '' : ` (${formatDuration(seconds(course.searForS))} once the fire is hot)`}, and a hand reading follows.`,
    })
  return warnings
}

function fromRuns(plan: CookPlan, runs: readonly Run[]): Warning[] {
  const share = (note: Note) => runs.reduce((n, run) => n + (run.notes.has(note) ? 1 : 0), 0) / runs.length
  const roast = indexOf(plan, (stage) => stage.do === 'roast')
  const sear = indexOf(plan, (stage) => stage.do === 'sear')
  const searStage = plan.stages[sear]
  const told = (note: Note, path: string, sentence: (share: string) => string): Warning[] =>
    share(note) < WORTH_TELLING ? [] : [{ code: note, path, sentence: sentence(formatShare(share(note))) }]
  return [
    ...told(
      'probe-read-more',
      `/stages/${roast}/probe`,
      (s) =>
        `The probe already reads more than the pull temperature when it goes in, in ${s} of runs: put it in earlier.`,
    ),
    ...told(
      'roast-limit',
      `/stages/${roast}/max`,
      (s) => `The roast's limit ends it before its target in ${s} of runs: allow more time or a hotter cooker.`,
    ),
    ...told(
      'sear-not-hot',
      `/stages/${sear}`,
      (s) =>
        `The meat comes off before the cooker is within ${SEAR_NEAR_K} °C of ${searStage?.do === 'sear' ? formatTemp(searStage.at) : 'the sear'} in ${s} of runs: pull earlier, or take the meat off while the fire climbs.`,
    ),
    ...told(
      'sear-limit',
      `/stages/${sear}/max`,
      (s) => `The sear's limit ends it before its target in ${s} of runs: allow longer, or pull later.`,
    ),
  ]
}

/** The stages that some members never get out of, each with its share of runs. */
function unfinished(plan: CookPlan, course: Course, runs: readonly Run[]): Warning[] {
  return course.stages.flatMap((stage, i) => {
    const share = runs.filter((run) => run.unfinished === i).length / runs.length
    if (share < WORTH_TELLING) return []
    const path = `/stages/${plan.stages.indexOf(stage)}/until`
    return [{ code: 'never', path, sentence: `${neverWords(stage)} in ${formatShare(share)} of runs.` }]
  })
}

function neverWords({ until }: Course['stages'][number]): string {
  if ('core' in until) return `The probe never reads ${formatTemp(until.core)}`
  if ('cooker' in until) return `The cooker never reads ${formatTemp(until.cooker)}`
  return `The cook is not done after ${formatDuration(seconds(LONGEST_S))}, where the forecast ends,`
}

/** A turn that is planned for a time at which the roast is over. */
function lateTurn(plan: CookPlan, course: Course, runs: readonly Run[]): Warning[] {
  const { turnS } = course
  if (turnS === undefined) return []
  const missed = runs.filter((run) => run.moments.turn === Infinity && run.moments.pull < Infinity)
  const share = missed.length / runs.length
  if (share < WORTH_TELLING && turnS < Infinity) return []
  const path = `/stages/${indexOf(plan, (stage) => stage.do === 'roast' && stage.turn !== undefined)}/turn`
  const sentence =
    turnS < Infinity
      ? `The roast is over before its turn at ${formatDuration(seconds(turnS))} in ${formatShare(share)} of runs: turn it earlier.`
      : 'The turn stands at half the likely time to pull, and the pull likely never comes: write its time, such as "60 min".'
  return [{ code: 'turn-too-late', path, sentence }]
}
