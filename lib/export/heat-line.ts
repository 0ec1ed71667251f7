import type { Drawing } from './drawing'
import { type HeatLineInput, heatFacts } from './heat-line-facts'
import { drawLying } from './heat-line-lying'
import { drawStanding } from './heat-line-standing'

export type { HeatLineCook, HeatLineInput } from './heat-line-facts'

/**
 * The heat line: one picture on one time axis, of daylight, temperature curves with their 5-95 % bands, moments as flags
 * with their windows, and the shots beneath. Lying for screens and print, standing (time down) for a phone.
 */
export function drawHeatLine(input: HeatLineInput): Drawing {
  const [first] = input.cooks
  if (!first) return { width: input.width, height: 0, title: input.title, marks: [], tables: [] }
  const facts = heatFacts(input, first)
  return input.standing ? drawStanding(input, facts) : drawLying(input, facts)
}
