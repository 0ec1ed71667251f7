import { type Instant, instant } from '../units'
import type { Drawing } from './drawing'
import { axisOf, type Scale, timeAxis } from './heat-line-axis'
import { letterCooker, letterMeat } from './heat-line-curve-words'
import { drawCooker, drawMeat } from './heat-line-curves'
import { drawDaylight, drawLightEdges, letterDaylight } from './heat-line-daylight'
import type { HeatFacts, HeatView } from './heat-line-facts'
import { drawFlags, type Flag, flagRoom, flagsOf, letterNever } from './heat-line-flags'
import { frameOf, nowIn } from './heat-line-frame'
import { drawHours, drawNow } from './heat-line-hours'
import { drawLaneGround, drawLanes } from './heat-line-lane-marks'
import { lanesOf } from './heat-line-lanes'
import { LETTERING, lettering, newSheet } from './heat-line-sheet'
import { heatTables } from './heat-line-table'
import { textWidth } from './text-width'

/** Under this width the lanes go below as a list. */
const LANES_FROM = 1000
const NARROW = 760
const RIGHT_MARGIN = 8
const MINUTE = 60_000

/** Top to bottom: daylight, hours, flags, meat, cooker, lanes, lid, hours. */
export function drawLying(view: HeatView, facts: HeatFacts): Drawing {
  const narrow = view.width < NARROW
  const [left, right] = [narrow ? 74 : 104, view.width - RIGHT_MARGIN]
  const withLanes = view.lanes && facts.crew !== null && view.width >= LANES_FROM
  const axis = axisFor(view, facts, withLanes ? facts : facts.heat, left, right)
  const now = nowIn(view, axis)
  const flags = flagsOf(view, facts, axis, now)
  const steps = Math.max(0, ...flags.map(({ step }) => step)) + 1
  const said = headline(view, flags, steps, left, now)
  const frame = frameOf(view, facts, { left, right, narrow, axis, now, steps }, said.above)
  const lanes = withLanes ? lanesOf(view, facts, frame) : null
  const bottom = lanes?.bottom ?? frame.cooker.bottom
  const sheet = newSheet(view.width)
  drawDaylight(sheet, facts, frame)
  drawNow(sheet, view, facts, frame, bottom)
  letterDaylight(sheet, facts, frame)
  drawHours(sheet, facts, frame, lanes?.bottom ?? null)
  if (lanes) drawLaneGround(sheet, lanes)
  drawLightEdges(sheet, facts, frame, bottom)
  drawMeat(sheet, facts, frame, view.now ?? null)
  drawCooker(sheet, facts, frame)
  drawFlags(sheet, facts, frame, flags, lanes?.feet ?? new Map())
  if (lanes) drawLanes(sheet, lanes, frame, facts.clock)
  for (const { y, words, how } of said.lines) sheet.letter(lettering.start(left, y, words, how, false))
  letterMeat(sheet, facts, frame)
  letterCooker(sheet, facts, frame)
  letterNever(sheet, facts, frame)
  return {
    width: view.width,
    height: bottom + (lanes ? 30 : 10),
    title: facts.title,
    marks: sheet.marks(),
    tables: heatTables(facts),
    axis: axisOf(axis, false),
    plot: { top: frame.sun.top, bottom },
    ...(lanes ? { boxes: lanes.own } : {}),
  }
}

/** Room that "dark" and its time need at the right edge, px. */
const DARK_ROOM = 44

type Span = { readonly from: Instant; readonly to: Instant }
/** The axis, made a little longer where the last label would run off the right edge. */
function axisFor(view: HeatView, facts: HeatFacts, span: Span, left: number, right: number): Scale {
  if (view.span) return timeAxis(view.span.from, view.span.to, left, right)
  const { from, to } = span
  const plot = right - left
  const dark = facts.light.find((part) => part.light === 'dark' && part.end >= to && part.start > from)
  const wants = [
    ...facts.moments.map((moment) => ({ at: moment.likely ?? from, room: flagRoom(moment, view, facts) })),
    ...(dark && dark.start < to ? [{ at: dark.start, room: DARK_ROOM }] : []),
  ]
  const lengths = wants
    .filter(({ room }) => room < plot * 0.4)
    .map(({ at, room }) => ((at - from) * plot) / (plot - room))
  const length = Math.max(to - from, ...lengths)
  return timeAxis(from, instant(from + Math.ceil(length / MINUTE) * MINUTE), left, right)
}

/** The sentence stands in the upper left while no flag does, nor now; else it pushes the picture down. */
function headline(view: HeatView, flags: readonly Flag[], steps: number, left: number, now: number | null) {
  if (!view.say) return { above: 0, lines: [] }
  const parts = [
    { words: view.say.main, how: LETTERING.say },
    ...view.say.why.map((words) => ({ words, how: LETTERING.why })),
  ]
  const wide = left + Math.max(...parts.map((part) => textWidth(part.words, part.how))) + 16
  const clear = ({ pole, bar, side, width, step }: Flag) =>
    Math.min(pole, bar?.[0] ?? pole, side === 'left' ? pole - width - 6 : pole) > wide ||
    steps - 1 - step >= parts.length
  const free = flags.every(clear) && (now === null || now > wide)
  return {
    above: free ? 0 : parts.length * 24 + 14,
    lines: parts.map((part, i) => ({ ...part, y: (free ? 116 : 20) + i * 25 })),
  }
}
