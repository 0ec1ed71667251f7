import { celsius, formatTemp } from '../units'
import { line, path } from './drawing'
import { curvePaths, type Scale, valueAt } from './heat-line-axis'
import type { CurvePoint, HeatFacts, HeatLineInput } from './heat-line-facts'
import { DOTTED, EDGE, type Frame, HAIR } from './heat-line-frame'
import { LETTERING, lettering, type Sheet } from './heat-line-sheet'
import { textWidth } from './text-width'

/** What would be, were the roast not cut. */
export const LEFT_WHOLE = { stroke: 'ink-3', width: 1.1, dash: [5, 3] } as const

export function drawMeat(sheet: Sheet, input: HeatLineInput, facts: HeatFacts, frame: Frame): void {
  const { left, right, axis, meat } = frame
  gutter(sheet, frame, 'meat', 'probe', meat.top + 14, input)
  ticks(sheet, frame, meat)
  drawBand(sheet, facts.meat, axis, meat.y)
  for (const target of facts.targets) {
    const end = meets(facts.meat, target.at)
    sheet.draw(line(left, meat.y(target.at), end ? axis(end) : right, meat.y(target.at), EDGE))
  }
  if (input.minimum) sheet.draw(line(left, meat.y(input.minimum.at), right, meat.y(input.minimum.at), DOTTED))
  sheet.draw(path(curvePaths(facts.meat, axis, meat.y).likely, { stroke: 'ink', width: 1.75 }))
  const { likely } = curvePaths(facts.whole, axis, meat.y)
  if (likely) sheet.draw(path(likely, LEFT_WHOLE))
}

export function drawCooker(sheet: Sheet, input: HeatLineInput, facts: HeatFacts, frame: Frame): void {
  const { axis, cooker } = frame
  gutter(sheet, frame, 'cooker', 'grate', (cooker.top + cooker.bottom) / 2 - 4, input)
  ticks(sheet, frame, cooker)
  drawBand(sheet, facts.cooker, axis, cooker.y)
  sheet.draw(path(curvePaths(facts.cooker, axis, cooker.y).likely, { stroke: 'ink-2', width: 1.5 }))
}

function gutter(sheet: Sheet, frame: Frame, name: string, of: string, y: number, input: HeatLineInput): void {
  const degrees = input.units === 'us' ? '°F' : '°C'
  sheet.letter(lettering.start(0, y, name, LETTERING.lane))
  sheet.letter(lettering.start(0, y + 14, frame.narrow ? degrees : `${of}, ${degrees}`, LETTERING.small))
}
function ticks(sheet: Sheet, frame: Frame, scale: Frame['meat']): void {
  for (const tick of scale.ticks) {
    sheet.draw(line(frame.left, tick.y, frame.right, tick.y, HAIR))
    sheet.letter(lettering.end(frame.left - 8, tick.y + 4.5, tick.words, LETTERING.axis))
  }
}
function drawBand(sheet: Sheet, points: readonly CurvePoint[], axis: Scale, level: Scale): void {
  const paths = curvePaths(points, axis, level)
  sheet.draw(path(paths.band, { fill: 'band' }), path(paths.low, EDGE), path(paths.high, EDGE))
}
/** When the likely curve first reaches a level. */
const meets = (points: readonly CurvePoint[], level: number) => points.find((p) => p.likely >= level)?.at

/** Words that stand on the lines; there is no legend. Each takes the first place that is free. */
export function letterMeat(sheet: Sheet, input: HeatLineInput, facts: HeatFacts, frame: Frame): void {
  const { left, meat, axis } = frame
  const onLine = (words: string, at: number) => {
    const across = [4, 100, 200, 300, 400].map((x) => left + x)
    const above = across.map((x) => [lettering.start(x, meat.y(at) - 3, words, LETTERING.small)])
    const below = across.map((x) => [lettering.start(x, meat.y(at) + 11, words, LETTERING.small)])
    sheet.letterWhereFree(...above, ...below)
  }
  if (input.minimum) onLine(input.minimum.words, input.minimum.at)
  for (const target of [...facts.targets].sort((a, b) => b.at - a.at)) onLine(target.words, target.at)
  const start = facts.meat[0]
  if (start) {
    const words = `${start.likely < 10 ? 'from the fridge' : 'starts at'}, ${formatTemp(celsius(start.likely), input.units)}`
    const y = meat.y(start.likely) - 6
    sheet.letterWhereFree([lettering.end(axis(start.at) - 6, y, words, LETTERING.small)])
  }
  letterSliced(sheet, input, facts, frame)
}

function letterSliced(sheet: Sheet, input: HeatLineInput, facts: HeatFacts, frame: Frame): void {
  const slice = facts.moments.find((m) => m.id === 'first-slice')?.likely
  const end = facts.meat.at(-1)
  if (!slice || !end) return
  const words = `about ${formatTemp(celsius(facts.sliced.likely), input.units)}`
  const { low, high } = facts.sliced
  const [from, to] = [low, high].map((level) => formatTemp(celsius(level), input.units))
  const range = from === to ? 'when sliced' : `${from?.split(' ')[0]} to ${to} when sliced`
  const x = frame.axis(end.at) + 10
  const y = frame.meat.y(end.likely)
  const at = (dx: number, dy: number) => [
    lettering.start(x + dx, y + dy, words, LETTERING.name),
    lettering.start(x + dx, y + dy + 15, range, LETTERING.small),
  ]
  const room = frame.right - x - textWidth(range, LETTERING.small)
  if (room >= 0) sheet.letterWhereFree(at(0, 3), at(0, 24), at(Math.min(20, room), 40))
  else sheet.letterWhereFree(at(room, 46), at(room, 64))
}

export function letterCooker(sheet: Sheet, input: HeatLineInput, facts: HeatFacts, frame: Frame): void {
  const { axis, cooker } = frame
  const likely = (id: string) => facts.moments.find((m) => m.id === id)?.likely
  const on = likely('meat-on')
  const pull = likely('pull') ?? facts.cooker.at(-1)?.at
  if (on && pull) {
    const x = axis(on + (pull - on) * 0.45)
    const held = roastLevel(facts, on, pull)
    sheet.letterWhereFree([lettering.middle(x, cooker.y(held) - 8, heldWords(held, input, facts), LETTERING.small)])
  }
  const end = facts.cooker.at(-1)
  if (facts.searAt === null || !end || likely('vents-open') === undefined) return
  const words = `vents wide open, ${formatTemp(facts.searAt, input.units)}`
  const y = cooker.y(end.likely)
  const fits = axis(end.at) + 10 + textWidth(words, LETTERING.small) <= frame.right
  if (fits) sheet.letterWhereFree([lettering.start(axis(end.at) + 10, y + 4, words, LETTERING.small)])
  else sheet.letterWhereFree([lettering.end(axis(end.at) - 4, y - 6, words, LETTERING.small)])
}

function roastLevel(facts: HeatFacts, on: number, pull: number): number {
  const between = facts.cooker.filter((p) => p.at > on && p.at < pull).map((p) => p.likely)
  return between.sort((a, b) => a - b)[Math.floor(between.length / 2)] ?? facts.roastAt
}
/** A difference below this is the cooker's own noise, °C. */
const TOLD_APART = 3
function heldWords(held: number, input: HeatLineInput, facts: HeatFacts): string {
  const dial = formatTemp(facts.roastAt, input.units)
  if (Math.abs(held - facts.roastAt) <= TOLD_APART) return `held at ${dial}`
  return `holds ${formatTemp(celsius(held), input.units)}; the dial says ${dial}`
}

/** The height of a moment's knot: on the meat's curve, before the meat is on the cooker's. */
export function knotY(facts: HeatFacts, frame: Frame, moment: HeatFacts['moments'][number]): number {
  const fire = moment.id === 'fire-lit' || moment.id === 'cooker-steady'
  const points = fire ? facts.cooker : [...facts.meat, ...facts.whole]
  const at = moment.likely
  const nearest = at !== null && at > (points.at(-1)?.at ?? 0) ? points.at(-1) : points[0]
  const point = (at === null ? null : valueAt(points, at)) ?? nearest
  return (fire ? frame.cooker : frame.meat).y(point?.likely ?? 0)
}
