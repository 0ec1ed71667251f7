import {
  crewComesHourLate,
  crewComesMinLate,
  crewComesMinLateWords,
  heldMinInInsulatedBox,
  heldMinInWarmOven,
  heldMinOnChokedFire,
  itIsCColder,
  itRainsHard,
  itRainsLightly,
  windIsMSStronger,
} from '../words/what-ifs'
/** What is asked of a day before it is shot; each is cooked and laid out anew when somebody asks. */
export const WHAT_IFS = [
  ['late-15', crewComesMinLate],
  ['late-30', crewComesMinLateWords],
  ['late-60', crewComesHourLate],
  ['colder', itIsCColder],
  ['windier', windIsMSStronger],
  ['rain-light', itRainsLightly],
  ['rain-heavy', itRainsHard],
  ['hold-cooker', heldMinOnChokedFire],
  ['hold-oven', heldMinInWarmOven],
  ['hold-box', heldMinInInsulatedBox],
] as const
export type WhatIfId = (typeof WHAT_IFS)[number][0]

export interface WhatIfAnswer {
  readonly title: string
  /** Beside today's plan, plain lines; or why it cannot be had. */
  readonly lines: readonly string[]
  /** To be saved where it is adopted; null where it cannot be had. */
  readonly document: Record<string, unknown> | null
}
