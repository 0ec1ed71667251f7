import type { MomentId } from '../model/moment-ids'
import { circle, line, path, rect, tenth } from './drawing'
import { inPlot, isInPlot, type Scale } from './heat-line-axis'
import { clockAt } from './heat-line-clock'
import { knotY } from './heat-line-curves'
import type { HeatFacts, HeatView, MomentFact } from './heat-line-facts'
import type { Frame } from './heat-line-frame'
import { LETTERING, lettering, type Sheet, upright } from './heat-line-sheet'
import { type FlagWish, LABEL_GAP, type PlacedFlag, placeFlags } from './heat-line-staircase'
import { neverWords, windowWords } from './heat-line-words'
import { textWidth } from './text-width'

export interface Flag extends PlacedFlag {
  readonly moment: MomentFact
  readonly pole: number
  /** Time, name, window: as many as the label has. */
  readonly words: readonly string[]
  readonly width: number
  /** Early to late; null where it has happened or is certain. */
  readonly bar: readonly [number, number] | null
  /** Where this morning's likely time stands. */
  readonly morning: number | null
}

/** Between time and name, and name and window. */
const WORD_GAPS = [5, 7] as const
/** Room for the tick after the time of what has happened. */
const TICK = 15
/** This morning's likely time is shown where it differs by more. */
const MOVED_MS = 90_000

/** Figures of the window leave the flag where a table with them stands beside, or where it is narrow. */
const isShort = (view: HeatView) => view.low === 'compact' || view.width < 760

function wordsOf(moment: MomentFact, view: HeatView, { clock }: HeatFacts): string[] {
  const window = isShort(view) ? '' : windowWords(moment, clock)
  return [clockAt(clock, moment.likely ?? 0), moment.name, ...(window ? [window] : [])]
}
function widthOf(words: readonly string[], moment: MomentFact): number {
  const [time = '', name, window] = words
  const parts = [
    textWidth(time, LETTERING.time) + (moment.marked ? TICK : 0),
    name === undefined ? 0 : WORD_GAPS[0] + textWidth(name, LETTERING.name),
    window === undefined ? 0 : WORD_GAPS[1] + textWidth(window, LETTERING.small),
  ]
  return parts.reduce((sum, part) => sum + part, 0)
}
/** Room that a moment's flag needs to the right of its pole. */
export const flagRoom = (moment: MomentFact, view: HeatView, facts: HeatFacts): number =>
  LABEL_GAP + widthOf(wordsOf(moment, view, facts), moment)

/** On paper, which is not high, windows leave the flags where they would pile up; the sheet's tables have them. */
const MOST_STEPS_ON_PAPER = 6
export function flagsOf(view: HeatView, facts: HeatFacts, axis: Scale, now: number | null): Flag[] {
  const full = placedFlags(view, facts, axis, now)
  const high = full.some(({ step }) => step >= MOST_STEPS_ON_PAPER)
  return high && view.low === 'paper' ? placedFlags({ ...view, low: 'compact' }, facts, axis, now) : full
}

function placedFlags(view: HeatView, facts: HeatFacts, axis: Scale, now: number | null): Flag[] {
  const shown = facts.moments.filter(({ likely }) => likely !== null && isInPlot(axis, likely))
  const known = shown.map((moment) => {
    const words = wordsOf(moment, view, facts)
    const widths = words.map((_, i) => widthOf(words.slice(0, words.length - i), moment))
    const pole = axis(moment.likely ?? 0)
    return { moment, pole, words, widths, bar: barOf(moment, axis, now), morning: morningOf(moment, axis) }
  })
  const wishes = known.map(({ pole, widths, bar, morning }): FlagWish => {
    const ends = [pole, ...(bar ?? []), ...(morning === null ? [] : [morning - 4, morning + 4])]
    return { pole, widths, bar: [Math.min(...ends), Math.max(...ends)] }
  })
  const placed = placeFlags(wishes, { left: 0, right: axis.range[1] + 8, now })
  return known.map(({ words, widths, ...flag }, i) => {
    const place = placed[i] as PlacedFlag
    return { ...flag, ...place, words: words.slice(0, words.length - place.cut), width: widths[place.cut] ?? 0 }
  })
}

function barOf(moment: MomentFact, axis: Scale, now: number | null): readonly [number, number] | null {
  if (moment.marked || moment.early === null) return null
  const left = Math.max(inPlot(axis, moment.early), now === null ? 0 : now + 3)
  const right = moment.late === null ? axis.range[1] : inPlot(axis, moment.late)
  if (right - left <= 4) return null
  const pole = axis(moment.likely ?? moment.early)
  // Of one that is overdue the rest of its window is left, on the other side of now.
  return [now !== null && pole < now ? left : Math.min(left, pole), right]
}
function morningOf({ likely, morning, marked }: MomentFact, axis: Scale): number | null {
  if (marked || !morning || likely === null || Math.abs(morning - likely) < MOVED_MS) return null
  return isInPlot(axis, morning) ? axis(morning) : null
}

/** Poles run from the label through the curve's knot to the shot they call: `feet` gives its upper edge. */
export function drawFlags(
  sheet: Sheet,
  facts: HeatFacts,
  frame: Frame,
  flags: readonly Flag[],
  feet: ReadonlyMap<MomentId, number>,
): void {
  const placed = flags.map((flag) => ({
    flag,
    y: frame.flagTop + (frame.steps - 1 - flag.step) * frame.step,
    knot: knotY(facts, frame, flag.moment),
  }))
  for (const { flag, y, knot } of placed) {
    const foot = Math.max(knot, feet.get(flag.moment.id) ?? knot)
    const pole = flag.moment.marked
      ? ({ stroke: 'ink-3', width: 1 } as const)
      : ({ stroke: 'ember', width: 1 } as const)
    sheet.draw(line(flag.pole, y - 11, flag.pole, foot, pole))
    sheet.take(upright(flag.pole, y - 11, foot))
  }
  for (const { flag, y, knot } of placed) {
    drawWindow(sheet, flag, y)
    drawKnot(sheet, flag.pole, knot, flag.moment)
    letterFlag(sheet, flag, y)
  }
  const first = placed.find(({ flag }) => flag.morning !== null)
  if (first) letterMorning(sheet, facts, frame, first.flag, first.y)
}

/** Open and ember while it is ahead, filled with ink once it has happened. */
export function drawKnot(sheet: Sheet, x: number, y: number, { marked }: MomentFact): void {
  if (marked) sheet.draw(circle(x, y, 4.2, { fill: 'ink', stroke: 'paper', width: 1 }))
  else sheet.draw(circle(x, y, 4.2, { fill: 'paper', stroke: 'ember', width: 2.25 }))
  sheet.take({ left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 })
}

function drawWindow(sheet: Sheet, { moment, pole, bar, morning }: Flag, y: number): void {
  if (morning !== null) sheet.draw(circle(morning, y + 7.2, 2.8, { fill: 'paper', stroke: 'ink-2', width: 1.25 }))
  if (moment.marked) return
  if (bar) sheet.draw(rect(bar[0], y + 5.5, bar[1] - bar[0], 3.5, { fill: 'ember' }))
  sheet.draw(rect(pole - 1.25, y + 2, 2.5, 10.5, { fill: 'ember' }))
}

function letterFlag(sheet: Sheet, { moment, pole, side, words, width }: Flag, y: number): void {
  const [time = '', name, window] = words
  let x = side === 'right' ? pole + LABEL_GAP : pole - LABEL_GAP - width
  sheet.letter(lettering.start(x, y, time, moment.marked ? LETTERING.past : LETTERING.time))
  x += textWidth(time, LETTERING.time)
  if (moment.marked) sheet.draw(path(tick(x + 4, y), { stroke: 'ink', width: 1.75, round: true }))
  x += (moment.marked ? TICK : 0) + WORD_GAPS[0]
  if (name === undefined) return
  sheet.letter(lettering.start(x, y, name, LETTERING.name))
  x += textWidth(name, LETTERING.name) + WORD_GAPS[1]
  if (window) sheet.letter(lettering.start(x, y, window, LETTERING.small))
}
/** The faces have no tick; it is drawn. */
export const tick = (x: number, y: number) => `M${tenth(x)} ${tenth(y - 4.5)}l3 3.5l5.5 -7.5`

/** Said once, of the first that has moved. */
function letterMorning(sheet: Sheet, { clock }: HeatFacts, frame: Frame, flag: Flag, y: number): void {
  const { morning, moment } = flag
  if (morning === null || !moment.morning) return
  const words = `${clockAt(clock, moment.morning)} this morning`
  const before = lettering.end(Math.min(morning, flag.bar?.[0] ?? morning) - 8, y + 11, words, LETTERING.small)
  const after = lettering.start(Math.max(morning, flag.bar?.[1] ?? morning) + 8, y + 11, words, LETTERING.small)
  const wide = textWidth(words, LETTERING.small)
  const fits = [...(before.x - wide > frame.left ? [[before]] : []), ...(after.x + wide < frame.right ? [[after]] : [])]
  sheet.letterWhereFree(...fits)
}

/** Moments that do not come in most cooks have no pole; they are named where there is room. */
export function letterNever(sheet: Sheet, facts: HeatFacts, frame: Frame): void {
  for (const moment of facts.never) {
    const words = `${moment.name}: ${neverWords(moment.reached)}`
    const rows = Array.from({ length: frame.steps }, (_, row) => frame.flagTop + row * frame.step)
    const right = rows.map((y) => [lettering.end(frame.right, y, words, LETTERING.name)])
    const left = rows.map((y) => [lettering.start(frame.left + 4, y, words, LETTERING.name)])
    sheet.letterWhereFree(...right, ...left)
  }
}
