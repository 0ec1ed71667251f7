/** Heat in the cells of a real solid, from 1 toward surroundings at 0, by explicit steps; time is time · diffusivity (m²). */
import type { CutCells } from './cut-cells'

/**
 * Of the stability limit. At it an even grid steps by a sixth of the square of its cells, where the error of time cancels
 * that of space along each axis: half or a tenth of the step is further from the exact solutions, not nearer.
 */
const SAFE = 0.9
/**
 * Between the middle of a skin cell and its skin the heat curves as the cell warms: k ∂T/∂r at the skin is that of the
 * straight line plus ρc ∂T/∂t d/2. With the film this comes to a cell that stores A d²/2(d + slip) less. Its full share
 * leaves the errors of the inner cells alone; at 0.4 the two cancel, as nodes and elements do in conduction.ts: order 1.7 and
 * better from 12 to 6 mm under every film, against 1.1 without it under a strong one.
 */
const SKIN_SHARE = 0.4

/** A run that is advanced step by step; `slipM` is k/h. */
class Run3d {
  readonly stepM2: number
  private readonly now: Float64Array
  private readonly flow: Float64Array
  private readonly skin: Float64Array
  private readonly store: Float64Array
  constructor(
    private readonly cells: CutCells,
    slipM: number,
  ) {
    const { count, from, to, areaPerM, depthM, flat, skinM2 } = cells
    this.skin = skinM2.map((a, i) => a / ((depthM[i] as number) + slipM))
    this.store = cells.volumeM3.map((v, i) => {
      const depth = depthM[i] as number
      return v - (SKIN_SHARE * (flat[i] as number) * (this.skin[i] as number) * depth ** 2) / 2
    })
    const total = Float64Array.from(this.skin)
    for (let n = 0; n < from.length; n++) {
      for (const end of [from[n] as number, to[n] as number])
        total[end] = (total[end] as number) + (areaPerM[n] as number)
    }
    this.stepM2 = SAFE / total.reduce((worst, g, i) => Math.max(worst, g / (this.store[i] as number)), 0)
    this.now = new Float64Array(count).fill(1)
    this.flow = new Float64Array(count)
  }

  /** At the middle itself, half a cell inside the innermost cell's own. */
  atCore(): number {
    const [c, ...beside] = this.cells.core
    const own = this.now[c] as number
    return beside.reduce((t, b) => t + (own - (this.now[b] as number)) / 8, own)
  }

  advance(byM2 = this.stepM2) {
    const { count, from, to, areaPerM } = this.cells
    const { now, flow, skin, store } = this
    for (let i = 0; i < count; i++) flow[i] = -(skin[i] as number) * (now[i] as number)
    for (let n = 0; n < from.length; n++) {
      const a = from[n] as number
      const b = to[n] as number
      const f = (areaPerM[n] as number) * ((now[b] as number) - (now[a] as number))
      flow[a] = (flow[a] as number) + f
      flow[b] = (flow[b] as number) - f
    }
    for (let i = 0; i < count; i++) now[i] = (now[i] as number) + (byM2 * (flow[i] as number)) / (store[i] as number)
  }
}

/** Time at which the core's excess falls to each level. */
export function coreTimes3d(cells: CutCells, slipM: number, levels: readonly number[]): number[] {
  const run = new Run3d(cells, slipM)
  return crossings(
    levels,
    run.stepM2,
    () => run.atCore(),
    () => run.advance(),
  )
}

/** The core's excess at each time, in rising order. */
export function coreExcess3d(cells: CutCells, slipM: number, timesM2: readonly number[]): number[] {
  const run = new Run3d(cells, slipM)
  let atM2 = 0
  return timesM2.map((untilM2) => {
    const steps = Math.ceil((untilM2 - atM2) / run.stepM2)
    for (let i = 0; i < steps; i++) run.advance((untilM2 - atM2) / steps)
    atM2 = untilM2
    return run.atCore()
  })
}

/** Steps until the value has fallen through every level; times by interpolation in the logarithm. */
export function crossings(levels: readonly number[], step: number, value: () => number, advance: () => void): number[] {
  const times: number[] = []
  let before = value()
  for (let n = 1; times.length < levels.length; n++) {
    if (n > 200_000) throw new RangeError('the core does not follow its surroundings; is a half side zero?')
    advance()
    const after = value()
    for (;;) {
      const level = levels[times.length]
      if (level === undefined || after > level) break
      times.push(step * (n - Math.log(after / level) / Math.log(after / before)))
    }
    before = after
  }
  return times
}
