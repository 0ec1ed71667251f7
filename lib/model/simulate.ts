/** One member's cook from meat-on to the cut slice and the peak of the core. */
import type { CookerHabits } from './cooker'
import type { CookerSite } from './cooker-path'
import type { Course } from './course'
import { PlainRoast } from './march'
import type { Matter } from './meat'
import type { MomentId } from './moment-ids'
import { memberFire } from './roast'
import type { Radial } from './shape'
import type { Member } from './spread'
import { stagesOf } from './stages'

/** What every member of a cook shares. */
export interface Setting {
  readonly course: Course
  readonly matter: Matter
  readonly habits: CookerHabits
  readonly radialAt: (thicknessFactor: number) => Radial
  readonly massKg: number
  /** About the cooker, and what feeds it; about the roast where it rests. */
  readonly site: CookerSite
  readonly rest: { readonly airC: number; readonly windMpS: number; readonly humidity: number }
  readonly pressurePa: number
  readonly nodes?: number
  /** The run is over at the first slice, and the peak of a roast left whole is not looked for. */
  readonly endsAtSlice?: boolean | undefined
  /** Longest step while roasting; searing takes half of it. */
  readonly stepS?: number
}

export interface State {
  readonly coreC: number
  readonly probeC: number
}
/** What one member's cook came to. Times are s after meat-on, +Infinity where it never got there. */
export interface Run {
  readonly moments: Record<MomentId, number>
  /** Samples one minute apart from meat-on; `driveC` is what drives the meat behind its wet front. */
  readonly trace: Readonly<Record<'cookerC' | 'surfaceC' | 'driveC' | 'coreC' | 'probeC', number[] | Float32Array>>
  readonly offHeat: State
  readonly atSlice: State
  readonly peakCoreC: number
  readonly lossFrac: number
  readonly lethalityLog: number
  /** r/R of the node with the least: 0 at the coldest line. */
  readonly lethalityAt: number
  /** Highest temperature of each node by the first slice, and its temperature then; r/R of the nodes. */
  readonly peakC: Float64Array
  readonly slicedC: Float64Array
  readonly place: Float64Array
  readonly exponent: number
  readonly notes: ReadonlySet<Note>
  /** Burnt from the match until the meat is done with the fire, kg; 0 where nothing burns. */
  readonly fuelKg: number
  /** When the charge could no longer hold the cooker's set point. */
  readonly ranOutS: number
  /** Whether a larger charge would have burnt more. */
  readonly fuelLimited: boolean
  /** Which of the course's stages never ends; none where the cook is done. */
  readonly unfinished: number | undefined
}
/** What somebody should know of a member's run. */
export type Note = 'probe-read-more' | 'roast-limit' | 'sear-limit' | 'sear-not-hot' | 'sear-fuel-short'

export const STEP_S = 30
export const SAMPLE_S = 60
/** The skin's error in one step, and the step that is taken whatever the error: at meat-on the film boils within seconds. */
export const SKIN_ERROR_K = 2
export const LEAST_STEP_S = 0.5
/** From then on all goes so slowly that steps of twice the length do. */
export const SLOW_AFTER_S = 6 * 3600
/** A cook that is not done by then never is. */
export const LONGEST_S = 36 * 3600
/** The sear has begun when the cooker is this near. */
export const SEAR_NEAR_K = 15
/** Takes a member through the stages alone, with the plain kernel. */
export function simulate(setting: Setting, member: Member): Run {
  const fire = memberFire(setting, member)
  const roast = new PlainRoast(setting, member, fire.cooker)
  const stages = stagesOf(setting, member, fire, roast)
  let now = stages.next()
  while (!now.done) now = stages.next(roast.march(now.value))
  return now.value
}
