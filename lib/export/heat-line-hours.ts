import { line, rect } from './drawing'
import { isInPlot, pxPerMinute } from './heat-line-axis'
import { clockAt, dayAt, midnights, roundTimes } from './heat-line-clock'
import type { HeatFacts, HeatView } from './heat-line-facts'
import { EDGE, type Frame, HAIR } from './heat-line-frame'
import { LETTERING, lettering, type Sheet, upright } from './heat-line-sheet'
import { textWidth } from './text-width'

const LEAST_APART = 72

/** Round times above, and below the lanes again; where the day changes, its date. */
export function drawHours(sheet: Sheet, facts: HeatFacts, frame: Frame, lanesBottom: number | null): void {
  const { axis, sun } = frame
  const [from, to] = axis.domain
  const bottom = lanesBottom ?? frame.cooker.bottom
  const nights = midnights(facts.clock, from, to)
  if (nights.length > 0) sheet.letter(lettering.start(0, frame.hours, dayAt(facts.clock, from), LETTERING.day))
  for (const at of roundTimes(facts.clock, from, to, pxPerMinute(axis), LEAST_APART)) {
    const x = axis(at)
    const night = nights.includes(at)
    sheet.draw(line(x, sun.bottom, x, bottom, night ? EDGE : HAIR))
    const words = night ? dayAt(facts.clock, at) : clockAt(facts.clock, at)
    const how = night ? LETTERING.day : LETTERING.axis
    if (x + textWidth(words, how) / 2 > frame.right + 8) continue
    sheet.letterWhereFree([lettering.middle(x, frame.hours, words, how)])
    if (lanesBottom !== null) sheet.letterWhereFree([lettering.middle(x, lanesBottom + 20, words, how)])
  }
}

/** Now: a line through everything, its time on it. */
export function drawNow(sheet: Sheet, view: HeatView, facts: HeatFacts, frame: Frame, bottom: number): void {
  const { now, axis } = frame
  if (now === null || view.now === undefined || !isInPlot(axis, view.now)) return
  sheet.draw(line(now, frame.sun.top, now, bottom, { stroke: 'ember', width: 2.25 }))
  sheet.take(upright(now, frame.sun.top, bottom))
  const words = `now ${clockAt(facts.clock, view.now)}`
  const half = textWidth(words, LETTERING.now) / 2 + 7
  const middle = Math.max(frame.left - 20 + half, Math.min(frame.right + 8 - half, now))
  sheet.draw(rect(middle - half, frame.hours - 15, 2 * half, 20, { fill: 'ember' }))
  sheet.take({ left: middle - half - 4, right: middle + half + 4, top: frame.hours - 15, bottom: frame.hours + 5 })
  sheet.letter(lettering.middle(middle, frame.hours, words, LETTERING.now, false))
}
