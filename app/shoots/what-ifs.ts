/** What is asked of a day before it is shot; each is cooked and laid out anew when somebody asks. */
export const WHAT_IFS = [
  ['late-15', 'The crew comes 15 min late'],
  ['late-30', 'The crew comes 30 min late'],
  ['late-60', 'The crew comes an hour late'],
  ['colder', 'It is 8 °C colder'],
  ['windier', 'The wind is 5 m/s stronger'],
  ['rain-light', 'It rains lightly'],
  ['rain-heavy', 'It rains hard'],
  ['hold-cooker', 'Held 30 min on the choked fire'],
  ['hold-oven', 'Held 30 min in a warm oven'],
  ['hold-box', 'Held 30 min in an insulated box'],
] as const
export type WhatIfId = (typeof WHAT_IFS)[number][0]

export interface WhatIfAnswer {
  readonly title: string
  /** Beside today's plan, plain lines; or why it cannot be had. */
  readonly lines: readonly string[]
  /** To be saved where it is adopted; null where it cannot be had. */
  readonly document: Record<string, unknown> | null
}
