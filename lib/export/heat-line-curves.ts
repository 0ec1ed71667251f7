import { circle, line, path, tenth } from './drawing'
import { curvePaths, inPlot, polyline, type Scale, valueAt, within } from './heat-line-axis'
import type { CurvePoint, HeatFacts, MomentFact, Reading } from './heat-line-facts'
import { DOTTED, EDGE, type Frame, HAIR } from './heat-line-frame'
import { LETTERING, lettering, type Sheet } from './heat-line-sheet'

/** What would be, were the roast not cut. */
export const LEFT_WHOLE = { stroke: 'ink-3', width: 1.1, dash: [5, 3] } as const
/** What was forecast this morning. */
export const MORNING = { stroke: 'ink-2', width: 1.25, dash: [7, 4] } as const
/** Reckoned until the probe is in. */
export const RECKONED = { stroke: 'ink', width: 2, dash: [0.1, 4.5], round: true } as const
export const MEASURED = { stroke: 'ink', width: 2.5 } as const

/** A curve by what is known of it: reckoned before the first reading, measured, forecast from the last one on. */
export interface Known {
  readonly reckoned: readonly CurvePoint[]
  readonly measured: readonly Reading[]
  readonly forecast: readonly CurvePoint[]
}
export function knownOf(
  points: readonly CurvePoint[],
  read: readonly Reading[],
  now: number | null,
  span: Span,
): Known {
  const shown = within(points, span[0], span[1])
  const first = read[0]
  const last = read.at(-1)
  const turn = last?.at ?? now
  const measured = read.filter(({ at }) => at >= span[0] && at <= span[1])
  if (turn === null || turn <= (points[0]?.at ?? turn)) return { reckoned: [], measured, forecast: shown }
  return {
    reckoned: within(shown, span[0], Math.min(first?.at ?? turn, span[1])),
    measured,
    forecast: within(shown, Math.max(turn, span[0]), span[1]),
  }
}
type Span = readonly [from: number, to: number]

export function drawMeat(sheet: Sheet, facts: HeatFacts, frame: Frame, now: number | null): void {
  const { left, right, axis, meat } = frame
  gutter(sheet, frame, 'meat', 'probe', meat.top + 14, facts)
  ticks(sheet, frame, meat)
  const known = knownOf(facts.meat, facts.day?.read ?? [], now, axis.domain)
  drawBand(sheet, known.forecast, axis, meat.y)
  for (const target of facts.targets) {
    const end = meets(facts.meat, target.at)
    const to = end === undefined ? right : inPlot(axis, end)
    if (to > left) sheet.draw(line(left, meat.y(target.at), to, meat.y(target.at), EDGE))
  }
  if (facts.minimum) sheet.draw(line(left, meat.y(facts.minimum.at), right, meat.y(facts.minimum.at), DOTTED))
  drawMorning(sheet, facts, axis, meat.y)
  drawKnown(sheet, known, axis, meat.y)
  const { likely } = curvePaths(within(facts.whole, ...axis.domain), axis, meat.y)
  if (likely) sheet.draw(path(likely, LEFT_WHOLE))
  takeCurve(sheet, within(facts.meat, ...axis.domain), axis, meat.y)
}

export function drawMorning(sheet: Sheet, { day }: HeatFacts, axis: Scale, level: Scale, standing = false): void {
  const [from, to] = axis.domain
  const shown = (day?.morning ?? []).filter(({ at }) => at >= from && at <= to)
  if (shown.length < 2) return
  sheet.draw(
    path(
      polyline(
        shown.map((p) => [axis(p.at), level(p.level)]),
        standing,
      ),
      MORNING,
    ),
  )
}

/** Readings as open dots, as close as they can stand apart. */
export function drawKnown(sheet: Sheet, known: Known, axis: Scale, level: Scale, standing = false): void {
  const reckoned = curvePaths(known.reckoned, axis, level, standing).likely
  if (reckoned) sheet.draw(path(reckoned, RECKONED))
  const likely = curvePaths(known.forecast, axis, level, standing).likely
  if (likely) sheet.draw(path(likely, { stroke: 'ink', width: 1.75 }))
  if (known.measured.length > 1) {
    const places = known.measured.map((p) => [axis(p.at), level(p.level)] as const)
    sheet.draw(path(polyline(places, standing), MEASURED))
  }
  let last = Number.NEGATIVE_INFINITY
  for (const { at, level: value } of known.measured) {
    const along = axis(at)
    if (along - last < 11) continue
    last = along
    const [x, y] = standing ? [level(value), along] : [along, level(value)]
    sheet.draw(circle(x, y, 3.2, { fill: 'paper', stroke: 'ink', width: 1.5 }))
  }
}

export function drawCooker(sheet: Sheet, facts: HeatFacts, frame: Frame): void {
  const { axis, cooker } = frame
  gutter(sheet, frame, 'cooker', 'grate', (cooker.top + cooker.bottom) / 2 - 4, facts)
  ticks(sheet, frame, cooker)
  const shown = within(facts.cooker, ...axis.domain)
  drawBand(sheet, shown, axis, cooker.y)
  const { likely } = curvePaths(shown, axis, cooker.y)
  if (likely) sheet.draw(path(likely, { stroke: 'ink-2', width: 1.5 }))
  for (const { at, level } of facts.day?.cookerRead ?? [])
    if (at >= axis.domain[0] && at <= axis.domain[1])
      sheet.draw(circle(axis(at), cooker.y(level), 2, { fill: 'ink-2' }))
  takeCurve(sheet, shown, axis, cooker.y)
}

function gutter(sheet: Sheet, frame: Frame, name: string, of: string, y: number, { units }: HeatFacts): void {
  const degrees = units === 'us' ? '°F' : '°C'
  sheet.letter(lettering.start(0, y, name, LETTERING.lane))
  sheet.letter(lettering.start(0, y + 14, frame.narrow ? degrees : `${of}, ${degrees}`, LETTERING.small))
}
function ticks(sheet: Sheet, frame: Frame, scale: Frame['meat']): void {
  for (const tick of scale.ticks) {
    sheet.draw(line(frame.left, tick.y, frame.right, tick.y, HAIR))
    sheet.letter(lettering.end(frame.left - 8, tick.y + 4.5, tick.words, LETTERING.axis))
  }
}
export function drawBand(
  sheet: Sheet,
  points: readonly CurvePoint[],
  axis: Scale,
  level: Scale,
  standing = false,
): void {
  const paths = curvePaths(points, axis, level, standing)
  if (paths.band) sheet.draw(path(paths.band, { fill: 'band' }), path(paths.low, EDGE), path(paths.high, EDGE))
}
/** Lettering keeps off the likely line. */
function takeCurve(sheet: Sheet, points: readonly CurvePoint[], axis: Scale, level: Scale): void {
  const [start, end] = [points[0], points.at(-1)]
  if (!start || !end) return
  for (let x = axis(start.at); x < axis(end.at); x += 8) {
    const at =
      axis.domain[0] + ((x - axis.range[0]) / (axis.range[1] - axis.range[0])) * (axis.domain[1] - axis.domain[0])
    const point = valueAt(points, at as CurvePoint['at'])
    if (point) sheet.take({ left: x - 1, right: x + 9, top: level(point.likely) - 1, bottom: level(point.likely) + 1 })
  }
}
/** When the likely curve first reaches a level. */
const meets = (points: readonly CurvePoint[], level: number) => points.find((p) => p.likely >= level)?.at

/** The height of a moment's knot: on the meat's curve, before the meat is on the cooker's. */
export function knotY(facts: HeatFacts, frame: Frame, moment: MomentFact): number {
  const fire = moment.id === 'fire-lit' || moment.id === 'cooker-steady'
  return tenth((fire ? frame.cooker : frame.meat).y(knotLevel(facts, moment, fire)))
}
export function knotLevel(facts: HeatFacts, { likely: at }: MomentFact, fire: boolean): number {
  const points = fire ? facts.cooker : [...facts.meat, ...facts.whole]
  const nearest = at !== null && at > (points.at(-1)?.at ?? 0) ? points.at(-1) : points[0]
  return ((at === null ? null : valueAt(points, at)) ?? nearest)?.likely ?? 0
}
