import { cookerScale, isInPlot, meatScale, type Scale, type TickedScale } from './heat-line-axis'
import type { CurvePoint, HeatFacts, HeatView } from './heat-line-facts'

/** Where the parts of a lying picture stand; px, y downwards. */
export interface Frame {
  readonly left: number
  readonly right: number
  readonly narrow: boolean
  readonly axis: Scale
  /** Where now stands, on the day itself. */
  readonly now: number | null
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

type Plot = Pick<Frame, 'left' | 'right' | 'narrow' | 'axis' | 'now' | 'steps'>
export function frameOf(view: HeatView, facts: HeatFacts, plot: Plot, above: number): Frame {
  const small = view.compact === true
  const step = small ? 20 : 27
  const sun = { top: 6 + above, bottom: 6 + above + (small ? 36 : 56) }
  const flagTop = sun.bottom + 49
  const meatTop = flagTop + (plot.steps - 1) * step + (small ? 22 : 27)
  const meatBottom = meatTop + (small ? 80 : view.width < 1000 ? 160 : 200)
  const cookerTop = meatBottom + (small ? 18 : 26)
  const cookerBottom = cookerTop + (small ? 40 : 62)
  const levels = facts.searAt === null ? [facts.roastAt] : [facts.roastAt, facts.searAt]
  return {
    ...plot,
    sun,
    hours: sun.bottom + 24,
    flagTop,
    step,
    meat: meatScale(highestOf(facts), facts.units, meatBottom, meatTop),
    cooker: cookerScale(levels, hottestOf(facts), facts.units, cookerBottom, cookerTop),
    lanes: cookerBottom + 14,
  }
}
const highest = (points: readonly CurvePoint[]) => Math.max(0, ...points.map((p) => p.high))
/** What the meat's scale must hold. */
export const highestOf = ({ meat, minimum, day }: HeatFacts): number =>
  Math.max(highest(meat), minimum?.at ?? 0, ...(day?.read ?? []).map(({ level }) => level))
const hottestOf = ({ cooker, day }: HeatFacts) =>
  Math.max(highest(cooker), ...(day?.cookerRead ?? []).map(({ level }) => level))

/** Now, where it lies in the picture. */
export const nowIn = ({ now }: HeatView, axis: Scale): number | null =>
  now !== undefined && isInPlot(axis, now) ? axis(now) : null
