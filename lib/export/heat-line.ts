import type { Drawing } from './drawing'
import { type HeatFacts, type HeatLineInput, heatFacts } from './heat-line-facts'
import { drawLying } from './heat-line-lying'
import { drawStanding } from './heat-line-standing'

export type { HeatFacts, HeatLineCook, HeatLineInput } from './heat-line-facts'

/** What the picture is drawn from; the same for every width. Null where there is no cook. */
export function heatLineFacts(input: HeatLineInput): HeatFacts | null {
  const [first] = input.cooks
  return first ? heatFacts(input, first) : null
}

/**
 * The heat line: one picture on one time axis, of daylight, temperature curves with their 5-95 % bands, moments as flags
 * with their windows, and the shots beneath. Lying for screens and print, standing (time down) for a phone.
 */
export function drawHeatLine(input: HeatLineInput, facts = heatLineFacts(input)): Drawing {
  if (!facts) return { width: input.width, height: 0, title: input.title, marks: [], tables: [] }
  return input.standing ? drawStanding(input, facts) : drawLying(input, facts)
}
