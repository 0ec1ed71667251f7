/** Apart from the guides, so that a page with the link does not load them. */
import type { GuideId } from './guides/guide'

export const help = 'Help'
export const otherScreens = 'Other screens'
export const laptopsView = 'The laptop’s view: everything at once'
export const presentersLine = 'The presenter’s line, to be read from afar'
export const otherPages = 'Plan, day, calls and card'

/** The guide that fits a page of a shoot. */
export const GUIDE_OF = {
  plan: 'plan-a-cook',
  day: 'plan-a-cook',
  calls: 'run-a-day',
  set: 'run-a-day',
  card: 'publish-a-card',
  wrap: 'publish-a-card',
  crew: 'run-a-day',
  readings: 'connect-a-logger',
} as const satisfies Record<string, GuideId>
