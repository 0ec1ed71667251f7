/** What somebody should know of the fire: a charge that runs out, coals too few for the sear, a day too rough for the cooker. */
import type { Warning } from '../refusals'
import { celsius, formatDuration, formatShare, formatTemp, seconds } from '../units'
import type { CookPlan, Stage } from './cook'
import { COOKERS, STEADY_K } from './cooker'
import { type Course, needsFire } from './course'
import { lossOutside_WpK, most_W } from './fuel'
import { medianOf } from './quantiles'
import { windAtCookerMpS } from './setting'
import type { Run } from './simulate'

/** Notes shared by fewer members than this are chance, not news. */
export const WORTH_TELLING = 0.02
/** The time is told to this; the fire is not known better. */
const ROUNDED_S = 600

export const fireWarnings = (plan: CookPlan, course: Course, runs: readonly Run[]): Warning[] => [
  ...runsOut(runs),
  ...tooFewCoals(plan, runs),
  ...roughDay(plan, course),
]

function runsOut(runs: readonly Run[]): Warning[] {
  const times = runs.map((run) => run.ranOutS).filter((timeS) => timeS < Infinity)
  const share = times.length / runs.length
  if (share < WORTH_TELLING) return []
  const middleS = medianOf(Float64Array.from(times))
  const about = formatDuration(seconds(Math.round(middleS / ROUNDED_S) * ROUNDED_S))
  const of = formatShare(share)
  return [
    {
      code: 'fire-runs-out',
      path: '/cooker/fuel',
      sentence:
        middleS < ROUNDED_S / 2
          ? `The fire is too low to hold its heat from the moment the meat goes on in ${of} of runs: light more.`
          : `The fire runs out at about ${about} in ${of} of runs: light more, or add some before then.`,
    },
  ]
}

function tooFewCoals(plan: CookPlan, runs: readonly Run[]): Warning[] {
  const share = runs.filter((run) => run.notes.has('sear-fuel-short')).length / runs.length
  const i = plan.stages.findIndex((stage) => stage.do === 'sear')
  const sear = plan.stages[i] as Extract<Stage, { do: 'sear' }> | undefined
  if (share < WORTH_TELLING || sear === undefined) return []
  return [
    {
      code: 'sear-fuel-short',
      path: `/stages/${i}`,
      sentence: `The coals left at the sear are too few for ${formatTemp(sear.at)} in ${formatShare(share)} of runs: add fuel before the vents open.`,
    },
  ]
}

/** A cold or windy day takes more heat than the cooker can give. */
function roughDay(plan: CookPlan, { stages }: Course): Warning[] {
  const habits = COOKERS[plan.cooker.kind]
  const { air, wind, rain } = plan.surroundings
  const windMpS = windAtCookerMpS(plan)
  const mostC = celsius(Math.round(air + most_W(habits) / lossOutside_WpK(habits, { windMpS, rain })))
  return stages.flatMap((stage) => {
    if (!needsFire(stage) || stage.at === undefined || (stage.do === 'sear' && stage.over)) return []
    if (Math.min(stage.at, habits.hottestC) <= mostC + STEADY_K) return []
    const windy = windMpS > 0 ? `In a wind of ${Math.round(wind)} m/s at ${formatTemp(air)}` : `At ${formatTemp(air)}`
    const rough = rain && !habits.indoors ? `${windy} and in ${rain} rain` : windy
    return [
      {
        code: 'too-rough-a-day',
        path: `/stages/${plan.stages.indexOf(stage)}/at`,
        sentence: `${rough} this cooker comes to about ${formatTemp(mostC)}, not to ${formatTemp(stage.at)}: shelter it, or plan a cooler fire.`,
      },
    ]
  })
}
