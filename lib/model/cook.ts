import type { Celsius, Frac, Kilograms, Metres, MetresPerSecond, Seconds } from '../units'
import type { CookerMemory } from './cooker-memory'
import type { CustomCut } from './custom-cut'

/** Rain as a crew would call it. */
export const RAINS = ['light', 'heavy'] as const
export type Rain = (typeof RAINS)[number]
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
export const HOLD_IN = ['cooker', 'oven', 'box'] as const
export type HoldIn = (typeof HOLD_IN)[number]
/** Absent: on a rack, open, where the cooker stands. */
export const REST_ON = ['rack', 'board'] as const
export const REST_COVERS = ['open', 'tent'] as const
export const REST_PLACES = ['indoors', 'outdoors'] as const
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
  /** Over `direct` heat: the meat is moved to a heat that stands at `at`, instead of waiting for the cooker to climb. */
  | {
      readonly do: 'sear'
      readonly at: Celsius
      readonly until: Until
      readonly max?: Seconds
      readonly over?: 'direct'
    }
  /** In the cooker, in a warm oven, or in an insulated box, which has no `at`. */
  | {
      readonly do: 'hold'
      readonly at?: Celsius
      readonly in?: HoldIn
      readonly until: Until
      readonly max?: Seconds
    }
  | {
      readonly do: 'rest'
      readonly until: Until
      readonly max?: Seconds
      readonly on?: (typeof REST_ON)[number]
      readonly cover?: (typeof REST_COVERS)[number]
      readonly where?: (typeof REST_PLACES)[number]
    }

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
  /** Absent, it is dry, or there is a roof. */
  readonly rain?: Rain | undefined
}
/** A lid opening beside those for turn and probe; `at` in seconds after meat-on. */
export type LidOpening = { readonly at: Seconds; readonly open: Seconds }

export interface CookerPlan {
  readonly kind: CookerKind
  /** Mass of the fuel lit; absent, the fire is fed enough. */
  readonly fuel?: Kilograms
  /** Fuel added later, `at` after meat-on. */
  readonly refuel?: readonly { readonly at: Seconds; readonly add: Kilograms }[]
  /** Without one the meat sees the fire; absent, there is one or the meat lies aside of the fire. */
  readonly deflector?: boolean
  /** Out of the wind. */
  readonly sheltered?: boolean
  /** What its logged cooks have taught. */
  readonly memory?: CookerMemory
}
/** All the model is told of one cook. Quantities are SI; defaults have been filled in by `lib/plan`. */
export interface CookPlan {
  readonly id: string
  readonly roast: Roast
  readonly cooker: CookerPlan
  readonly stages: readonly Stage[]
  /** About the cooker. */
  readonly surroundings: Surroundings
  /** About the roast while it rests or lies in a box, where that is not about the cooker. */
  readonly restSurroundings?: Surroundings
  readonly lidOpenings: readonly LidOpening[]
}
