import { circle, hatch, type Lettering, line, path, rect, tenth } from './drawing'
import { isInPlot, type Scale } from './heat-line-axis'
import { clockAt } from './heat-line-clock'
import type { HeatFacts, LightPart } from './heat-line-facts'
import { DOTTED, EDGE, type Frame } from './heat-line-frame'
import { LETTERING, lettering, type Sheet } from './heat-line-sheet'
import { textWidth } from './text-width'

/** Golden hour is hatched wide, twilight closer and closer toward the dark, which is solid: told without colour. */
export const GOLD = { gap: 7, how: { stroke: 'ink-2', width: 0.75 } } as const
const TWILIGHT = { stroke: 'ink-2', width: 1 } as const
const [WIDEST, CLOSEST] = [8, 2.2]
/** The sun's height that fills the band, degrees, unless it climbs higher. */
const FULL_HEIGHT_DEG = 44

/** The sun's course over its horizon, the ground beneath it light. */
export function drawDaylight(sheet: Sheet, facts: HeatFacts, frame: Frame): void {
  const { sun, axis, left, right } = frame
  const height = heightScale(facts, sun.bottom, sun.top + 3)
  const courses = sunPath(facts, axis, height)
  sheet.draw(...courses.map(({ ground }) => path(ground, { fill: 'leaf' })))
  for (const part of facts.light) drawPart(sheet, part, frame)
  sheet.draw(...courses.map((course) => path(course.line, { stroke: 'ink', width: 1.5 })))
  sheet.draw(line(left, sun.bottom, right, sun.bottom, EDGE))
}

/** After the now-line, which these keep off. */
export function letterDaylight(sheet: Sheet, facts: HeatFacts, frame: Frame): void {
  const { sun } = frame
  const height = heightScale(facts, sun.bottom, sun.top + 3)
  sheet.letter(lettering.start(0, sun.bottom - 15, 'daylight', LETTERING.lane))
  sheet.letter(lettering.start(0, sun.bottom, frame.narrow ? 'sun' : 'sun above horizon', LETTERING.small))
  drawSunNow(sheet, facts, frame, height)
  for (const part of facts.light) letterPart(sheet, facts, part, frame)
  letterNoon(sheet, facts, frame, height)
}

type Height = (deg: number) => number
export function heightScale(facts: HeatFacts, ground: number, top: number): Height {
  const full = Math.max(FULL_HEIGHT_DEG, ...facts.sun.map((s) => s.deg))
  return (deg) => ground + (Math.max(0, deg) / full) * (top - ground)
}

interface Course {
  readonly line: string
  readonly ground: string
}
/** The sun's course on each day of the picture while it is up, and the ground under it. */
export function sunPath(facts: HeatFacts, axis: Scale, height: Height, standing = false): Course[] {
  const [from, to] = axis.domain
  const edge = (at: number) => ({ at, deg: sunAt(facts, at) ?? -90 })
  const inside = facts.sun.filter(({ at }) => at > from && at < to)
  const days: { at: number; deg: number }[][] = []
  let up = false
  for (const point of [edge(from), ...inside, edge(to)]) {
    const isUp = point.deg >= -1
    if (isUp && !up) days.push([])
    if (isUp) days.at(-1)?.push(point)
    up = isUp
  }
  const place = (t: number, h: number) => (standing ? `${tenth(h)} ${tenth(t)}` : `${tenth(t)} ${tenth(h)}`)
  return days.flatMap((day) => {
    const [first, last] = [day[0], day.at(-1)]
    if (!first || !last || day.length < 2) return []
    const course = `M${day.map(({ at, deg }) => place(axis(at), height(deg))).join('L')}`
    const ground = `${course}L${place(axis(last.at), height(0))}L${place(axis(first.at), height(0))}Z`
    return [{ line: course, ground }]
  })
}

function shown(part: LightPart, axis: Scale): { from: number; width: number } | null {
  const from = Math.max(axis.range[0], axis(part.start))
  const width = Math.min(axis.range[1], axis(part.end)) - from
  return width > 0.5 ? { from, width } : null
}

function drawPart(sheet: Sheet, part: LightPart, { axis, sun }: Frame): void {
  const place = shown(part, axis)
  if (!place) return
  const height = sun.bottom - sun.top
  if (part.light === 'golden') sheet.draw(path(hatch(place.from, sun.top, place.width, height, GOLD.gap), GOLD.how))
  else if (part.light === 'twilight') {
    const strokes = duskStrokes(axis, part).map((x) => `M${tenth(x)} ${tenth(sun.top)}V${tenth(sun.bottom)}`)
    if (strokes.length > 0) sheet.draw(path(strokes.join(''), TWILIGHT))
  } else {
    sheet.draw(rect(place.from, sun.top, place.width, height, { fill: 'night', stroke: 'edge', width: 0.75 }))
    for (const [dx, dy, r] of stars(place.width, height))
      sheet.draw(circle(place.from + dx, sun.top + dy, r, { fill: 'star' }))
  }
}

/** Strokes across a twilight, closer toward its dark end. */
export function duskStrokes(axis: Scale, part: LightPart): number[] {
  const [start, end] = [axis(part.start), axis(part.end)]
  const evening = part.name === 'sunset'
  const strokes: number[] = []
  for (let at = 0; at < end - start; ) {
    strokes.push(evening ? start + at : end - at)
    at += WIDEST + (CLOSEST - WIDEST) * (at / (end - start))
  }
  return strokes.filter((x) => x >= axis.range[0] && x <= axis.range[1])
}

/** A few points of light where the dark is wide enough, always the same ones, none behind its lettering. */
export function stars(width: number, height: number): (readonly [number, number, number])[] {
  const found: [number, number, number][] = []
  for (let i = 0; i * 23 + 52 < width - 6; i++) {
    const [a, b] = [(i * 0.618034) % 1, (i * 0.754878) % 1]
    found.push([52 + i * 23 + a * 12, 5 + b * (height - 10), i % 3 === 0 ? 1.1 : 0.7])
  }
  return found
}

/** "sun 19° up" at now. */
function drawSunNow(sheet: Sheet, facts: HeatFacts, frame: Frame, height: Height): void {
  const { now, axis, sun } = frame
  if (now === null) return
  const at =
    axis.domain[0] + ((now - axis.range[0]) / (axis.range[1] - axis.range[0])) * (axis.domain[1] - axis.domain[0])
  const deg = sunAt(facts, at)
  if (deg === null || deg < 0) return
  const y = height(deg)
  sheet.draw(circle(now, y, 5.5, { fill: 'paper', stroke: 'ink', width: 1.5 }))
  const words = `sun ${Math.round(deg)}° up`
  const beside = (dy: number) => [
    [lettering.start(now + 11, y + dy, words, LETTERING.small)],
    [lettering.end(now - 11, y + dy, words, LETTERING.small)],
  ]
  sheet.take({ left: now - 6, right: now + 6, top: sun.top, bottom: sun.bottom })
  sheet.letterWhereFree(...beside(-3), ...beside(14))
}

export function sunAt({ sun }: HeatFacts, at: number): number | null {
  const after = sun.findIndex((point) => point.at >= at)
  const [a, b] = [sun[after - 1], sun[after]]
  if (!b) return null
  if (!a) return b.at === at ? b.deg : null
  return a.deg + ((b.deg - a.deg) * (at - a.at)) / (b.at - a.at)
}

/** Where the sun stands highest, on a day that begins before noon. */
function letterNoon(sheet: Sheet, facts: HeatFacts, frame: Frame, height: Height): void {
  const { sun } = facts
  for (const [i, { at, deg }] of sun.entries()) {
    const [before, after] = [sun[i - 1]?.deg ?? 90, sun[i + 1]?.deg ?? 90]
    if (deg < before || deg <= after || deg < 5 || !isInPlot(frame.axis, at)) continue
    const words = `highest, ${Math.round(deg)}°`
    const place = lettering.middle(frame.axis(at), height(deg) + 15, words, LETTERING.small)
    sheet.letterWhereFree([place])
  }
}

function letterPart(sheet: Sheet, facts: HeatFacts, part: LightPart, { axis, sun, right }: Frame): void {
  if (!isInPlot(axis, part.start) || part.start === axis.domain[0]) return
  const dark = part.light === 'dark'
  const name = { ...LETTERING.small, role: dark ? 'star' : 'ink-2' } as const
  const time = { ...LETTERING.lightTime, role: dark ? 'star' : 'ink' } as const
  const x = axis(part.start) + 5
  const end = Math.min(right, axis(part.end))
  // A little further on where now, or its words, stand at the beginning.
  const aside = (words: string, how: Lettering) =>
    [0, 14, 28, 72, 86].map((dx) => x + dx).filter((at) => at === x || at + textWidth(words, how) + 4 <= end)
  if (textWidth(part.name, name) + 4 <= end - x)
    sheet.letterWhereFree(
      ...aside(part.name, name).map((at) => [lettering.start(at, sun.top + 14, part.name, name, !dark)]),
    )
  const clock = clockAt(facts.clock, part.start)
  if (x + textWidth(clock, time) > (dark ? end : Math.min(right, end + 8))) return
  sheet.letterWhereFree(...aside(clock, time).map((at) => [lettering.start(at, sun.top + 29, clock, time, !dark)]))
}

/** Golden hour and sunset, carried down as dotted lines. */
export function drawLightEdges(sheet: Sheet, facts: HeatFacts, frame: Frame, bottom: number): void {
  for (const part of facts.light) {
    if (part.light === 'dark' || !isInPlot(frame.axis, part.start)) continue
    const x = frame.axis(part.start)
    if (x > frame.left + 1) sheet.draw(line(x, frame.hours + 6, x, bottom, DOTTED))
  }
}
