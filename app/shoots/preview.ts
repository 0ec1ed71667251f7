import type { Tone } from '@/lib/export/cut-face'
import type { Drawing } from '@/lib/export/drawing'
import type { SafetyPanel } from '@/lib/export/safety-panel'
import type { KernelName } from '@/lib/model/kernels'
import type { Warning } from '@/lib/refusals'
import type { UnitSystem } from '@/lib/units'
import type { HeatPictures } from '../ui/heat-line-shapes'

/** What the plan page shows beside the form: the likely day as pictures and sentences. */
export interface Preview {
  readonly units: UnitSystem
  /** Which kernel worked the forecast out, here or on the server. */
  readonly kernel: KernelName
  /** "Light at 16:07. Meat on at 17:12." */
  readonly first: string
  /** "First slice about 20:33, 20:00 to 21:11." */
  readonly second: string
  readonly heatLine: HeatPictures
  readonly cutFace: Drawing
  readonly slice: string
  /** Heats worth comparing the slice at: "110 °C". */
  readonly heats: readonly string[]
  /** What each colour of the slice means. */
  readonly tones: readonly Tone[]
  readonly facts: readonly string[]
  /** The safety ledger, cook by cook. */
  readonly safety: readonly { readonly title: string; readonly panel: SafetyPanel }[]
  /** What of the wished day cannot be had. */
  readonly conflicts: readonly string[]
  readonly warnings: readonly Warning[]
  /** Each under the field of the thing that is dangerous. */
  readonly cautions: readonly Warning[]
}
