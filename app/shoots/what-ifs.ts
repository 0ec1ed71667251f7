import {
  crew1HLate,
  crew15MinLate,
  crew30MinLate,
  heldInBox,
  heldInOven,
  heldOnChokedFire,
  itIsColder,
  itRainsHard,
  itRainsLightly,
  windIsStronger,
} from '../words/what-ifs'
/** What is asked of a day before it is shot; each is cooked and laid out anew when somebody asks. */
export const WHAT_IFS = [
  ['late-15', crew15MinLate],
  ['late-30', crew30MinLate],
  ['late-60', crew1HLate],
  ['colder', itIsColder],
  ['windier', windIsStronger],
  ['rain-light', itRainsLightly],
  ['rain-heavy', itRainsHard],
  ['hold-cooker', heldOnChokedFire],
  ['hold-oven', heldInOven],
  ['hold-box', heldInBox],
] as const
export type WhatIfId = (typeof WHAT_IFS)[number][0]

export interface WhatIfAnswer {
  readonly title: string
  /** Beside today's plan, plain lines; or why it cannot be had. */
  readonly lines: readonly string[]
  /** To be saved where it is adopted; null where it cannot be had. */
  readonly document: Record<string, unknown> | null
}
