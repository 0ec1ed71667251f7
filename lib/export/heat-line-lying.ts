import { instant } from '../units'
import type { Drawing } from './drawing'
import { axisOf, type Scale, timeAxis } from './heat-line-axis'
import { drawCooker, drawMeat, letterCooker, letterMeat } from './heat-line-curves'
import { drawDaylight, drawHours, drawLightEdges } from './heat-line-daylight'
import { daylight, type HeatFacts, type HeatLineInput } from './heat-line-facts'
import { drawFlags, type Flag, flagsOf, labelWidth, letterNever, staircase } from './heat-line-flags'
import { frameOf } from './heat-line-frame'
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
export function drawLying(input: HeatLineInput, known: HeatFacts): Drawing {
  const narrow = input.width < NARROW
  const left = narrow ? 74 : 104
  const right = input.width - RIGHT_MARGIN
  const axis = axisWithRoom(input, known, left, right)
  const to = instant(axis.domain()[1] ?? known.to)
  const facts = to > known.to ? { ...known, to, ...daylight(input.place, known.from, to) } : known
  const flags = flagsOf(input, facts, axis)
  const steps = staircase(flags.map((flag) => flag.reach))
  const said = headline(input, flags, steps, left)
  const frame = frameOf(input, facts, { left, right, narrow, axis, steps: Math.max(0, ...steps) + 1 }, said.above)
  const lanes = input.lanes && input.width >= LANES_FROM ? lanesOf(input, facts, frame) : null
  const bottom = lanes?.bottom ?? frame.cooker.bottom
  const sheet = newSheet()
  drawDaylight(sheet, input, facts, frame)
  drawHours(sheet, input, frame, lanes?.bottom ?? null)
  if (lanes) drawLaneGround(sheet, lanes)
  drawLightEdges(sheet, facts, frame, bottom)
  drawMeat(sheet, input, facts, frame)
  drawCooker(sheet, input, facts, frame)
  drawFlags(sheet, facts, frame, flags, steps, lanes?.feet ?? new Map())
  if (lanes) drawLanes(sheet, lanes, frame, input.zone)
  for (const { y, words, how } of said.lines) sheet.letter(lettering.start(left, y, words, how, false))
  letterMeat(sheet, input, facts, frame)
  letterCooker(sheet, input, facts, frame)
  letterNever(sheet, facts, frame)
  const height = bottom + (lanes ? 30 : 10)
  const { width, title } = input
  return {
    width,
    height,
    title,
    marks: sheet.marks(),
    tables: heatTables(input, facts),
    axis: axisOf(axis, false),
    ...(lanes ? { boxes: lanes.own } : {}),
  }
}

/** Room that "dark" and its time need at the right edge, px. */
const DARK_ROOM = 44

/** The axis, made a little longer where the last label would run off the right edge. */
function axisWithRoom(input: HeatLineInput, facts: HeatFacts, left: number, right: number): Scale {
  const plot = right - left
  const dark = facts.light.find((part) => part.light === 'dark' && part.end >= facts.to && part.start > facts.from)
  const wants = [
    ...facts.moments.map((moment) => ({ at: moment.likely ?? facts.from, room: labelWidth(moment, input) })),
    ...(dark ? [{ at: dark.start, room: DARK_ROOM }] : []),
  ]
  const lengths = wants
    .filter(({ room }) => room < plot * 0.8)
    .map(({ at, room }) => ((at - facts.from) * plot) / (plot - room))
  const length = Math.max(facts.to - facts.from, ...lengths)
  return timeAxis(facts.from, instant(facts.from + Math.ceil(length / MINUTE) * MINUTE), left, right)
}

/** The sentence stands in the upper left while no flag does; else it pushes the picture down. */
function headline(input: HeatLineInput, flags: readonly Flag[], steps: readonly number[], left: number) {
  if (!input.say) return { above: 0, lines: [] }
  const parts = [
    { words: input.say.main, how: LETTERING.say },
    ...input.say.why.map((words) => ({ words, how: LETTERING.why })),
  ]
  const wide = Math.max(...parts.map((part) => textWidth(part.words, part.how)))
  const count = Math.max(0, ...steps) + 1
  const free = flags.every(
    (flag, i) => flag.reach.left > left + wide + 16 || count - 1 - (steps[i] ?? 0) >= parts.length,
  )
  const above = free ? 0 : parts.length * 24 + 14
  const first = free ? 112 : 20
  return { above, lines: parts.map((part, i) => ({ ...part, y: first + i * 25 })) }
}
