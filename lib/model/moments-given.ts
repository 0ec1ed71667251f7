/**
 * Moments as readings leave them. What has happened has happened in every member, and what a live probe says has not, has
 * not. Within half an hour of the pull, where going on as lately foretells as well as any model, the two are weighed by what
 * each is worth: the members' pulls are drawn toward the extrapolated one and closer together, never further apart.
 */
import type { Forecast } from './forecast'
import { MOMENT_IDS, type MomentId } from './moment-ids'
import { medianOf } from './quantiles'

export interface Given {
  readonly pastS: Readonly<Partial<Record<MomentId, number>>>
  readonly nowS: number
  /** The probe reads, and pull waits for it. */
  readonly alive: boolean
  /** Pull by extrapolation; none where it says nothing. */
  readonly extrapolatedS: number | undefined
  /** Root mean square of what the best member leaves of the readings, K, and how many there are of them. */
  readonly left: { readonly leftK: number; readonly count: number } | undefined
}
const AFTER_PULL: readonly MomentId[] = ['vents-open', 'sear-start', 'off-heat', 'carryover-peak', 'first-slice']
const BESIDE: readonly MomentId[] = ['turn', 'carryover-peak']
const CHECK_WITHIN_S = 1800
/** Both read the same readings and err alike, so that two narrow by less than two strangers would. [own-trial] */
const NARROWS = 0.5
/** Error of an extrapolation, s: so much at once, and growing with the square of the time ahead. Measured on twins. [own-trial] */
const CHECK_SD_S = 15
const CHECK_SD_PER_S = 0.288 / 3600

export function momentsGiven(forecast: Forecast, given: Given): Forecast['moments'] {
  const { pastS, nowS, alive } = given
  const pulls = forecast.moments.pull
  const weighed = pulls && pastS.pull === undefined ? widened(pulls, given, weigh(pulls, given)) : (t: number) => t
  const moments: Partial<Record<MomentId, Float64Array>> = {}
  for (const id of MOMENT_IDS) {
    const row = forecast.moments[id]
    if (row) moments[id] = row.slice()
  }
  for (let m = 0; m < forecast.members; m++) {
    const ownS = pulls ? (pulls[m] as number) : 0
    const leastS = alive ? nowS : Number.NEGATIVE_INFINITY
    const pullS = pastS.pull ?? Math.max(leastS, weighed(ownS))
    const byS = Number.isFinite(ownS) ? pullS - ownS : 0
    let beforeS = Number.NEGATIVE_INFINITY
    for (const id of MOMENT_IDS) {
      const row = moments[id]
      if (row === undefined) continue
      const movedS = id === 'pull' ? pullS : (row[m] as number) + (AFTER_PULL.includes(id) ? byS : 0)
      const timeS = pastS[id] ?? movedS
      row[m] = BESIDE.includes(id) ? timeS : Math.max(timeS, beforeS)
      if (!BESIDE.includes(id)) beforeS = row[m] as number
    }
  }
  return moments
}

/**
 * A cook that the model follows well is foretold better than one that it follows badly. What is left of the readings is so
 * much in the mean over twins of seed 2 (families A and B together); windows go with its square, within these bounds. [own-trial]
 */
const USUAL_LEFT_K = 0.19
const WIDENS = { least: 0.6, most: 1.8 } as const
/** Few readings are followed by any model. */
const ENOUGH = 20
/** Near the pull the readings themselves tell. */
const NEAR_S = 300
const FAR_S = 900

function widened(pulls: Float64Array, { left, nowS }: Given, weighed: (timeS: number) => number) {
  const middleS = weighed(medianOf(pulls))
  if (!left || !Number.isFinite(middleS)) return weighed
  const full = Math.min(WIDENS.most, Math.max(WIDENS.least, (left.leftK / USUAL_LEFT_K) ** 2))
  const far = Math.min(1, Math.max(0, (middleS - nowS - NEAR_S) / (FAR_S - NEAR_S)))
  const by = 1 + (full - 1) * far * Math.min(1, left.count / ENOUGH)
  return (timeS: number) => (Number.isFinite(timeS) ? middleS + by * (weighed(timeS) - middleS) : timeS)
}

function weigh(pulls: Float64Array, { nowS, extrapolatedS }: Given): (timeS: number) => number {
  const middleS = medianOf(pulls)
  const aheadS = middleS - nowS
  if (extrapolatedS === undefined || !(aheadS < CHECK_WITHIN_S) || extrapolatedS - nowS > 2 * CHECK_WITHIN_S)
    return (timeS) => timeS
  const finite = pulls.filter(Number.isFinite)
  const meanS = finite.reduce((sum, t) => sum + t, 0) / finite.length
  const own = finite.reduce((sum, t) => sum + (t - meanS) ** 2, 0) / finite.length
  const check = (CHECK_SD_S + CHECK_SD_PER_S * Math.max(0, aheadS) ** 2) ** 2
  const share = own / (own + check)
  const closer = 1 - NARROWS * (1 - Math.sqrt(1 - share))
  const towardS = middleS + share * (extrapolatedS - middleS)
  return (timeS) => (Number.isFinite(timeS) ? towardS + closer * (timeS - middleS) : timeS)
}
