import type { Forecast } from '../model/forecast'
import { type Check, modelSource } from './check'
import type { Claim } from './claim'
import { greyDepth, PINK_BELOW_C, pinkShare } from './figures'

/** From here on a cook may say "edge to edge": the crust alone takes the rest. */
const ALL_OF_IT = 0.95
const MOST_OF_IT = 0.9

/** "Edge to edge" against the share of the face whose peak stayed below 65 °C; null for claims that are numbers. */
export function checkEvenness(claim: Claim, f: Forecast): Check | null {
  if (claim.unit !== 'word') return null
  const [share, depth] = [pinkShare(f), greyDepth(f)]
  if (!share || !depth) return null
  const mm = Math.max(1, Math.round(depth.likely * 1000))
  const finding =
    share.low >= ALL_OF_IT ? 'borne-out' : share.likely >= MOST_OF_IT ? 'borne-out-with-care' : 'contradicted'
  return {
    finding,
    figure: share,
    found: `${Math.round(share.likely * 100)} % of the face stayed below ${PINK_BELOW_C} °C`,
    reason: `The outer ${mm} mm went above it.`,
    by: 'model',
    source: modelSource(f),
    mend: null,
    trueSentence: finding === 'contradicted' ? evenness(share.likely, mm) : null,
  }
}
const evenness = (share: number, mm: number) =>
  share < 0.02 ? 'Cooked through, with nothing left pink.' : `Pink for all but the outer ${mm} mm.`
