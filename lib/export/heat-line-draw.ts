import type { Drawing } from './drawing'
import type { HeatFacts, HeatView } from './heat-line-facts'
import { drawLying } from './heat-line-lying'
import { drawStanding } from './heat-line-standing'

/**
 * The heat line: one picture on one time axis, of daylight, temperature curves with their 5-95 % bands, moments as flags
 * with their windows, and the shots beneath. Lying for screens and print, standing (time down) for a phone. Light enough
 * for the page itself: no model, no sun, no calendar behind it.
 */
export const drawHeat = (view: HeatView, facts: HeatFacts): Drawing =>
  view.standing ? drawStanding(view, facts) : drawLying(view, facts)
