import { cookerScale, meatScale, type Scale, type TickedScale } from './heat-line-axis'
import type { CurvePoint, HeatFacts, HeatLineInput } from './heat-line-facts'

/** Where the parts of a lying picture stand; px, y downwards. */
export interface Frame {
  readonly left: number
  readonly right: number
  readonly narrow: boolean
  readonly axis: Scale
  readonly sun: { readonly top: number; readonly bottom: number }
  /** Baseline of the hours. */
  readonly hours: number
  /** Baseline of the highest flag, and the height of a step. */
  readonly flagTop: number
  readonly step: number
  readonly steps: number
  readonly meat: TickedScale
  readonly cooker: TickedScale
  readonly lanes: number
}

export const HAIR = { stroke: 'rule', width: 0.75 } as const
export const EDGE = { stroke: 'edge', width: 0.75 } as const
export const DOTTED = { stroke: 'ink-3', width: 1, dash: [1, 4], round: true } as const

type Plot = Pick<Frame, 'left' | 'right' | 'narrow' | 'axis' | 'steps'>
export function frameOf(input: HeatLineInput, facts: HeatFacts, plot: Plot, above: number): Frame {
  const small = input.compact === true
  const step = small ? 20 : 27
  const sun = { top: 6 + above, bottom: 6 + above + (small ? 36 : 52) }
  const flagTop = sun.bottom + 49
  const meatTop = flagTop + (plot.steps - 1) * step + (small ? 22 : 27)
  const meatBottom = meatTop + (small ? 80 : input.width < 1000 ? 160 : 200)
  const cookerTop = meatBottom + (small ? 18 : 26)
  const cookerBottom = cookerTop + (small ? 40 : 62)
  const levels = facts.searAt === null ? [facts.roastAt] : [facts.roastAt, facts.searAt]
  const hottest = highest(facts.meat, input.minimum?.at)
  return {
    ...plot,
    sun,
    hours: sun.bottom + 24,
    flagTop,
    step,
    meat: meatScale(hottest, input.units, meatBottom, meatTop),
    cooker: cookerScale(levels, highest(facts.cooker), input.units, cookerBottom, cookerTop),
    lanes: cookerBottom + 14,
  }
}
export const highest = (points: readonly CurvePoint[], least = 0) => Math.max(least, ...points.map((p) => p.high))
