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
/** Heights of the parts, px: on a screen, on a sheet that must hold it whole, and on the call sheet. */
const HEIGHTS = {
  screen: { sun: 56, step: 27, toMeat: 27, meat: 200, toCooker: 26, cooker: 62 },
  paper: { sun: 40, step: 21, toMeat: 20, meat: 112, toCooker: 16, cooker: 42 },
  compact: { sun: 36, step: 20, toMeat: 22, meat: 80, toCooker: 18, cooker: 40 },
} as const

export function frameOf(view: HeatView, facts: HeatFacts, plot: Plot, above: number): Frame {
  const part = HEIGHTS[view.low ?? 'screen']
  const sun = { top: 6 + above, bottom: 6 + above + part.sun }
  const flagTop = sun.bottom + 49
  const meatTop = flagTop + (plot.steps - 1) * part.step + part.toMeat
  const meatBottom = meatTop + (view.low === undefined && view.width < 1000 ? 160 : part.meat)
  const cookerTop = meatBottom + part.toCooker
  const cookerBottom = cookerTop + part.cooker
  const levels = facts.searAt === null ? [facts.roastAt] : [facts.roastAt, facts.searAt]
  return {
    ...plot,
    sun,
    hours: sun.bottom + 24,
    flagTop,
    step: part.step,
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
