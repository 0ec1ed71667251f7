import type { Celsius, Frac, Kilograms, Metres, MetresPerSecond, Seconds } from '../units'
import type { CustomCut } from './custom-cut'

/** The cookers the model knows. The shoot file's schema lists the same ids. */
export const COOKER_KINDS = [
  'oven',
  'convection-oven',
  'ceramic-charcoal',
  'kettle-charcoal',
  'offset-wood',
  'pellet',
  'gas-grill',
  'water-bath',
] as const
export type CookerKind = (typeof COOKER_KINDS)[number]

/** What ends a stage. `core` is as the probe reads it, `cooker` the cooker's own reading. */
export type Until = { readonly core: Celsius } | { readonly after: Seconds } | { readonly cooker: Celsius }

export type Turn = { readonly after: Seconds } | { readonly at: 'half' }
export type ProbeAt = 'start' | 'turn' | Seconds
export type Stage =
  | { readonly do: 'preheat'; readonly at: Celsius; readonly cold?: boolean }
  | {
      readonly do: 'roast'
      readonly at: Celsius
      readonly until: Until
      readonly max?: Seconds
      readonly turn?: Turn
      readonly probe?: { readonly at: ProbeAt; readonly lead?: Celsius }
    }
  | { readonly do: 'sear'; readonly at: Celsius; readonly until: Until; readonly max?: Seconds }
  | { readonly do: 'hold'; readonly at: Celsius; readonly until: Until; readonly max?: Seconds }
  | { readonly do: 'rest'; readonly until: Until; readonly max?: Seconds }

export interface Roast {
  readonly cut: string
  /** What `cut: "custom"` is. */
  readonly custom?: CustomCut
  readonly mass: Kilograms
  readonly start: Celsius
  /** Thickest place as it lies; measured, else the catalogue's typical one for the mass. */
  readonly thickness?: Metres
  readonly width?: Metres
  readonly length?: Metres
  /** Needled, bladed or injected: what lay on its surface is inside. */
  readonly pierced?: boolean
}
export interface Surroundings {
  readonly air: Celsius
  readonly wind: MetresPerSecond
  readonly humidity: Frac
  readonly altitude: Metres
}
/** A lid opening beside those for turn and probe; `at` in seconds after meat-on. */
export type LidOpening = { readonly at: Seconds; readonly open: Seconds }

/** All the model is told of one cook. Quantities are SI; defaults have been filled in by `lib/plan`. */
export interface CookPlan {
  readonly id: string
  readonly roast: Roast
  readonly cooker: { readonly kind: CookerKind }
  readonly stages: readonly Stage[]
  readonly surroundings: Surroundings
  readonly lidOpenings: readonly LidOpening[]
}
