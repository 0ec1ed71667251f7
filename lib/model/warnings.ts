/** What somebody should know of a forecast, in sentences. Paths are JSON pointers into the cook. */
import type { Warning } from '../refusals'
import { formatDuration, formatShare, formatTemp, seconds } from '../units'
import type { CookPlan, Stage } from './cook'
import { COOKERS } from './cooker'
import { type Course, leadTooWeak, probeOf, searOf } from './course'
import type { Note, Run } from './simulate'
import { SEAR_NEAR_K } from './simulate'

/** Notes shared by fewer members than this are chance, not news. */
const WORTH_TELLING = 0.02

export function warningsOf(plan: CookPlan, course: Course, runs: readonly Run[]): Warning[] {
  return [...fromPlan(plan, course), ...fromRuns(plan, runs)]
}

const indexOf = (plan: CookPlan, wanted: (stage: Stage) => boolean) =>
  plan.stages.reduce((found, stage, i) => (wanted(stage) ? i : found), -1)

function fromPlan(plan: CookPlan, course: Course): Warning[] {
  const warnings: Warning[] = []
  plan.stages.forEach((stage, i) => {
    if (stage.do === 'preheat' || stage.do === 'rest') return
    const hottest = COOKERS[plan.cooker.kind].hottestC
    if (stage.at > hottest)
      warnings.push({
        code: 'hotter-than-cooker',
        path: `/stages/${i}/at`,
        sentence: `This cooker reaches about ${hottest} °C; ${formatTemp(stage.at)} is taken as that.`,
      })
    if ('core' in stage.until && stage.until.core >= stage.at)
      warnings.push({
        code: 'target-above-cooker',
        path: `/stages/${i}/until/core`,
        sentence: `The core cannot reach ${formatTemp(stage.until.core)} in a cooker at ${formatTemp(stage.at)}: raise the cooker or lower the target.`,
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
    ...told('never', `/stages/${roast}/until`, (s) => `${neverWords(plan.stages[roast])} in ${s} of runs.`),
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

function neverWords(roast: Stage | undefined): string {
  if (roast?.do === 'roast' && 'core' in roast.until) return `The probe never reads ${formatTemp(roast.until.core)}`
  return 'The cook never ends'
}
