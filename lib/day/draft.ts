import type { Mode } from './crew'

/** What the search varies. */
export interface Genes {
  /** For each cook an index into its choices. */
  readonly meatOn: number[]
  /** How long before it is first needed the crew comes, where no call is given; minutes. */
  callLead: number
  /** Staffing of each moment shot: index of its mode, or DROPPED. */
  readonly momentMode: number[]
  /**
   * In which order the other shots choose their place; the mode each tries first, and how long after its first window
   * opens, or AS_ANNOUNCED, or LEFT_OUT.
   */
  readonly order: number[]
  readonly mode: number[]
  readonly offset: number[]
  /** Wanted minutes from the call, and from the end of the meal before, to each meal. */
  readonly meals: number[]
}
/** An offset: where it was announced, or else the soonest. */
export const AS_ANNOUNCED = -1
/** An offset: not before all others have had their choice. */
export const LEFT_OUT = -2
export const copyGenes = (genes: Genes): Genes => ({
  meatOn: [...genes.meatOn],
  callLead: genes.callLead,
  momentMode: [...genes.momentMode],
  order: [...genes.order],
  mode: [...genes.mode],
  offset: [...genes.offset],
  meals: [...genes.meals],
})

/** A shot's place on the sheet; minutes of the day (moment shots to the second). */
export interface Place {
  readonly mode: Mode
  readonly setupStart: number
  readonly start: number
  readonly end: number
  /** Expected number of calls that break into it. */
  readonly risk: number
}
export interface MealPlace {
  readonly start: number
  readonly end: number
  /** Indices of people. */
  readonly people: readonly number[]
}
export interface DutyPlace {
  readonly task: number
  readonly start: number
  readonly end: number
  readonly people: readonly number[]
  /** Nobody was free: the watcher is bound elsewhere. */
  readonly short: boolean
}
/** A whole day as the genes lay it out. */
export interface Draft {
  readonly meatOn: readonly number[]
  readonly crewCall: number
  readonly wrap: number
  readonly moments: readonly (Place | null)[]
  readonly floats: readonly (Place | null)[]
  readonly duties: readonly DutyPlace[]
  readonly meals: readonly MealPlace[]
  readonly mealsMissing: number
  readonly cost: number
  /** The part of the cost that is paid for what was announced and is changed. */
  readonly moved: number
}
