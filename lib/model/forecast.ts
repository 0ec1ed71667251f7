import type { Warning } from '../refusals'
import type { Celsius, Frac, Metres, Seconds } from '../units'
import type { CookPlan } from './cook'
import type { Slice } from './cut-face'
import type { KernelName } from './kernels'
import type { MomentId } from './moment-ids'
import type { Radial } from './shape'

/**
 * Quantiles over all members; one that never gets there counts as later than every time.
 * A quantile that falls there is null. `reached` is the share of members that get there.
 */
export interface Window {
  readonly early: Seconds | null
  readonly likely: Seconds | null
  readonly late: Seconds | null
  readonly q10: Seconds | null
  readonly q90: Seconds | null
  readonly reached: Frac
}
export type Spread<Q> = { readonly low: Q; readonly likely: Q; readonly high: Q }

/**
 * Member histories on a common time axis, row per member: `coreC[m * count + i]` is member m at `startS + i * stepS`
 * (seconds after meat-on). Before meat-on the meat columns hold the start temperature.
 */
export interface Trace {
  readonly startS: number
  readonly stepS: number
  readonly count: number
  readonly cookerC: Float32Array
  readonly surfaceC: Float32Array
  /** Coldest point. */
  readonly coreC: Float32Array
  /** What the probe reads, or would read were it in already. */
  readonly probeC: Float32Array
}

/** The predicted slice: temperatures against depth below the thin side, through the thickest place, likely member in 3-D. */
export interface CutFace {
  readonly thickness: Metres
  readonly width: Metres
  /** Depth of each node below the surface, m, outermost first. */
  readonly depthM: readonly number[]
  /** Highest temperature each node has reached by the first slice, °C (decides the colour). */
  readonly peakC: readonly number[]
  /** Temperature of each node when sliced, °C. */
  readonly slicedC: readonly number[]
  /** Share of the face's area whose peak stayed below 58, 60, 65, 70 °C. `likely` is the likely member's own, as drawn. */
  readonly areaBelow: readonly { readonly limitC: number; readonly share: Spread<Frac> }[]
  /** How deep below the thin side the peak passed 60, 65, 70 °C; half the thickness where it did right through. */
  readonly bandDepth: readonly { readonly limitC: number; readonly depthM: Spread<Metres> }[]
  /** Share of the face's area whose peak passed 60, 65, 70 °C. */
  readonly shareAbove: readonly { readonly limitC: number; readonly share: Spread<Frac> }[]
}

/** One cook's joint ensemble. Arrays are per member unless said otherwise; day, card and screens all read this one object. */
export interface Forecast {
  readonly modelVersion: string
  readonly kernel: KernelName
  readonly seed: number
  readonly members: number
  readonly cook: CookPlan
  /** Seconds after meat-on; +Infinity where the member never gets there. A moment the plan does not have is absent. */
  readonly moments: Readonly<Partial<Record<MomentId, Float64Array>>>
  readonly trace: Trace
  readonly offHeat: { readonly coreC: Float64Array; readonly probeC: Float64Array }
  readonly atSlice: { readonly coreC: Float64Array; readonly probeC: Float64Array }
  /** Peak of the coldest point if the roast were left whole; its time is the moment carryover-peak. */
  readonly peakCoreC: Float64Array
  /** Mass lost by the first slice, share of the raw mass. */
  readonly lossFrac: Float64Array
  /** Least log reduction over all points by the first slice, inside the published table's range. */
  readonly lethalityLog: Float64Array
  /** Where that least lies, r/R: 0 at the coldest line, 1 at the skin. */
  readonly lethalityAt: Float64Array
  /** The 1-D stand-in of the roast at its likely thickness. */
  readonly radial: Radial
  /** Worked out in 3-D when first asked for, and then kept; so is what lies behind it. */
  readonly cutFace: CutFace
  readonly slice: Slice
  /** Burnt from the match until the meat is done with the fire, were it fed enough, kg; none for electric and gas cookers. */
  readonly fuelKg?: Float64Array
  /** When the charge can no longer hold the cooker's set point, s after meat-on; none where the fire is fed enough. */
  readonly fuelOutS?: Float64Array
  readonly warnings: readonly Warning[]
}

/** `shown`: the member whose slice is shown; else the one nearest the middle. */
export type ForecastOptions = {
  readonly members?: number
  readonly seed: number
  readonly kernel?: KernelName
  readonly shown?: number
}
/** What a member's value is worth: the (5, 50, 95 %) quantiles of a finite sample. */
export type Levels = Spread<Celsius>
