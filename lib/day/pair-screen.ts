import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { formatShare } from '../units'
import { clashShare, type Tie } from './clash'
import { cookTimes } from './cook-times'
import { crewOf } from './crew'
import type { DayForecast } from './day-forecast'
import type { Layout } from './layout'
import { type MomentJob, momentJobs } from './moment-job'
import { quoted } from './words'

/** Two shots at moments, and how often one camera with its operator has both. */
export interface PairRow {
  /** Ids, the likely earlier one first. */
  readonly shots: readonly [string, string]
  readonly share: number
  /** They stand at one place so close together that the camera only re-frames between them. */
  readonly chain: boolean
  readonly sentence: string
}
/** Pairs that nearly always work are no question. */
const NEARLY_ALWAYS = 0.995

/** Every pair of filmed moments that one camera may miss, the worst first, taken member by member. */
export function pairScreen(shoot: Shoot, forecasts: ReadonlyMap<string, DayForecast>, layout: Layout): PairRow[] {
  const cooks = shoot.cooks.flatMap(({ id }) => {
    const forecast = forecasts.get(id)
    return forecast ? [cookTimes(id, forecast)] : []
  })
  const zero = cooks.map(({ id }) => fromIso(layout.meatOn[id] ?? layout.start) / 60_000)
  const filmed = momentJobs(shoot, crewOf(shoot), cooks).jobs.filter((job) =>
    job.modes.some((m) => m.cameras.length > 0),
  )
  const at = (job: MomentJob) => (zero[job.cook] as number) + job.likely
  const inOrder = filmed.toSorted((a, b) => at(a) - at(b))
  return inOrder
    .flatMap((a, i) =>
      inOrder.slice(i + 1).map((b) => pairOf(a, b, (zero[b.cook] as number) - (zero[a.cook] as number))),
    )
    .filter(({ share }) => share < NEARLY_ALWAYS)
    .sort((a, b) => a.share - b.share)
}

function pairOf(a: MomentJob, b: MomentJob, apartMin: number): PairRow {
  const chain = a.chain.has(b.shot.id)
  const tie: Tie = chain ? 'chain' : 'turns'
  const share = 1 - clashShare(a, b, tie, apartMin)
  const [one, two] = [a.shot, b.shot]
  const sentence = `The same camera for ${quoted(one.title)} and ${quoted(two.title)} works in ${formatShare(share)} of cooks.`
  return { shots: [one.id, two.id], share, chain, sentence }
}
