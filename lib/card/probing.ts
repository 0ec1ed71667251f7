/** How the reading that decides is taken: common practice of kitchens, and the ice point of every thermometer's maker. */
import { celsius, formatTemp, type UnitSystem } from '../units'

/** For the card, short. */
export const PROBE_CARE =
  'Try three spots before slicing; the lowest counts. Wipe and sanitise the probe between them, and wash it between raw and done.'

/** [estimate] what a probe may be off in iced water before it is not to be trusted, K. */
const ICE_POINT_SLACK_K = 1

/** Step by step, for the screen. */
export const probingSteps = (units: UnitSystem): readonly string[] => [
  `Before the day, hold the probe in a glass full of ice with water between: it must read ${formatTemp(celsius(0), units)}, ${units === 'us' ? `within ${Math.round(ICE_POINT_SLACK_K * 1.8)} °F` : `within ${ICE_POINT_SLACK_K} °C`}.`,
  'Before slicing, read three spots: the thickest place, and a hand’s breadth to either side, clear of bone and fat. Of a bird: both thighs and the breast.',
  'The lowest of the three counts.',
  'Between spots wipe the probe and sanitise it; what it touched in raw meat it carries into done.',
]
