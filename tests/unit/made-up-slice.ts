import type { Slice } from '../../lib/model/cut-face'
import type { CutFace } from '../../lib/model/forecast'
import { LAYERS, RAYS } from '../../lib/model/section'

/** A slice with a given profile of peaks along every ray: good for pictures, no physics in it. */
export function madeUpSlice(face: CutFace): Slice {
  const half = face.thickness / 2
  const at = (share: number) => {
    const depth = (1 - share) * half
    const i = Math.max(
      1,
      face.depthM.findIndex((d) => d >= depth - 1e-9),
    )
    const [a, b] = [face.depthM[i - 1] ?? 0, face.depthM[i] ?? half]
    const [hot, cool] = [face.peakC[i - 1] ?? 50, face.peakC[i] ?? 50]
    return hot + ((depth - a) / (b - a || 1)) * (cool - hot)
  }
  const grid = (of: (peakC: number) => number) =>
    Float64Array.from({ length: RAYS * LAYERS }, (_, k) => of(at((k % LAYERS) / (LAYERS - 1))))
  return {
    member: 0,
    cutFace: face,
    section: {
      halfThicknessM: half,
      halfWidthM: face.width / 2,
      exponents: [2, 2],
      peakC: grid((peakC) => peakC),
      slicedC: grid((peakC) => Math.min(70, peakC)),
      greyed: grid((peakC) => Math.min(1, Math.max(0, (peakC - 55) / 15))),
    },
    coldest: { inTheMiddle: true, lethalityLog: 1, cellsLog: 1.1, likelyLog: 1 },
    coreMissK: 0,
  }
}
