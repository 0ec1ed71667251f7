import { formatClock } from '../plan/clock'
import { instant } from '../units'
import { hatch, line, path, rect, tenth } from './drawing'
import { clockOffset, hours } from './heat-line-axis'
import type { HeatFacts, HeatLineInput, LightPart } from './heat-line-facts'
import { DOTTED, EDGE, type Frame, HAIR } from './heat-line-frame'
import { LETTERING, lettering, type Sheet } from './heat-line-sheet'
import { textWidth } from './text-width'

/** Hatching of a part of the light: wide for gold, tight for twilight; dark is solid. */
export const HATCHES = {
  golden: { gap: 7, how: { stroke: 'ink-2', width: 0.75 } },
  twilight: { gap: 3.4, how: { stroke: 'ink-2', width: 1 } },
} as const
/** The sun's height that fills the band, degrees, unless it climbs higher. */
const FULL_HEIGHT_DEG = 44

/** The sun's height over its horizon; hatched toward the evening, so that it is told without colour. */
export function drawDaylight(sheet: Sheet, input: HeatLineInput, facts: HeatFacts, frame: Frame): void {
  const { sun, axis } = frame
  for (const part of facts.light) drawPart(sheet, part, frame)
  const full = Math.max(FULL_HEIGHT_DEG, ...facts.sun.map((s) => s.deg))
  const y = (deg: number) => sun.bottom - (deg / full) * (sun.bottom - sun.top - 2)
  const d = sunPath(facts, axis, y)
  if (d) sheet.draw(path(d, { stroke: 'ink', width: 1.5 }))
  sheet.draw(line(frame.left, sun.bottom, frame.right, sun.bottom, EDGE))
  sheet.letter(lettering.start(0, sun.bottom - 15, 'daylight', LETTERING.lane))
  sheet.letter(lettering.start(0, sun.bottom, frame.narrow ? 'sun' : 'sun above horizon', LETTERING.small))
  for (const part of facts.light) letterPart(sheet, input, part, frame)
}

/** The sun's course while it is up, as path data. */
export function sunPath(
  facts: HeatFacts,
  along: (at: number) => number,
  across: (deg: number) => number,
  standing = false,
) {
  let down = true
  return facts.sun
    .flatMap(({ at, deg }) => {
      const place = standing ? [across(deg), along(at)] : [along(at), across(deg)]
      const step = deg < -1 ? [] : [`${down ? 'M' : 'L'}${place.map(tenth).join(' ')}`]
      down = deg < -1
      return step
    })
    .join('')
}

function drawPart(sheet: Sheet, part: LightPart, { axis, sun, right }: Frame): void {
  const x = axis(part.start)
  const width = Math.min(right, axis(part.end)) - x
  const height = sun.bottom - sun.top
  if (part.light === 'dark') sheet.draw(rect(x, sun.top, width, height, { fill: 'ink' }))
  else {
    const { gap, how } = HATCHES[part.light]
    sheet.draw(path(hatch(x, sun.top, width, height, gap), how))
  }
}

function letterPart(sheet: Sheet, input: HeatLineInput, part: LightPart, { axis, sun, right }: Frame): void {
  if (part.start <= (axis.domain()[0] ?? 0)) return
  const dark = part.light === 'dark'
  const name = { ...LETTERING.small, role: dark ? 'paper' : 'ink-2' } as const
  const time = { ...LETTERING.lightTime, role: dark ? 'paper' : 'ink' } as const
  const x = axis(part.start) + 4
  const fits = textWidth(part.name, name) + 4 <= Math.min(right, axis(part.end)) - x
  if (fits) sheet.letterWhereFree([lettering.start(x, sun.top + 13, part.name, name, !dark)])
  const clock = formatClock(part.start, input.zone)
  if (x + textWidth(clock, time) > right) return
  sheet.letterWhereFree([lettering.start(x, sun.top + 28, clock, time, !dark)])
}

export function drawHours(sheet: Sheet, input: HeatLineInput, frame: Frame, lanesBottom: number | null): void {
  const { axis, sun } = frame
  const bottom = lanesBottom ?? frame.cooker.bottom
  const offset = clockOffset(instant(axis.domain()[0] ?? 0), input.zone)
  for (const at of hours(axis, offset, 52)) {
    const x = axis(at)
    sheet.draw(line(x, sun.bottom, x, bottom, HAIR))
    if (x + 18 > frame.right + 8) continue
    sheet.letter(lettering.middle(x, frame.hours, formatClock(at, input.zone), LETTERING.axis))
    if (lanesBottom !== null)
      sheet.letter(lettering.middle(x, lanesBottom + 20, formatClock(at, input.zone), LETTERING.axis))
  }
}

/** Golden hour and sunset, carried down as dotted lines. */
export function drawLightEdges(sheet: Sheet, facts: HeatFacts, frame: Frame, bottom: number): void {
  for (const part of facts.light) {
    const x = frame.axis(part.start)
    if (part.light !== 'dark' && x > frame.left) sheet.draw(line(x, frame.hours - 2, x, bottom, DOTTED))
  }
}
