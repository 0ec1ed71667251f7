import type { MealPlace, Place } from './draft'

/** What was announced for a shot; frozen where it is past or about to begin. Null: it was dropped. */
export interface Announced {
  readonly place: Place | null
  readonly frozen: boolean
  /** Told for an hour, not for when the cook is so far. */
  readonly byClock: boolean
}
/** What a running day has already. Minutes of the day. */
export interface Standing {
  /** Nothing that is not announced may begin before. */
  readonly earliest: number
  readonly moments: readonly (Announced | null)[]
  readonly floats: readonly (Announced | null)[]
  /** Eaten, or about to be. */
  readonly meals: readonly MealPlace[]
  /** Whether a change of what was announced has its price. */
  readonly stable: boolean
}
