import type { MomentId } from '../model/moment-ids'
import { formatClock } from '../plan/clock'
import { circle, line, rect } from './drawing'
import type { Scale } from './heat-line-axis'
import { knotY } from './heat-line-curves'
import type { HeatFacts, HeatLineInput, MomentFact } from './heat-line-facts'
import type { Frame } from './heat-line-frame'
import { LETTERING, lettering, type Sheet } from './heat-line-sheet'
import { neverWords, windowWords } from './heat-line-words'
import { textWidth } from './text-width'

/** A flag's reach on the x axis: its pole, and the outer edges of label and window bar. */
export interface FlagReach {
  readonly pole: number
  readonly left: number
  readonly right: number
  /** The right edge of the label alone. */
  readonly labelEnd: number
}
export interface Flag {
  readonly moment: MomentFact
  readonly time: string
  readonly window: string
  readonly reach: FlagReach
}

/** Least air between a label and the next pole or flag, px. */
const AIR = 8

/**
 * The step of each flag, 0 the lowest. Given by time; taken from last to first, each goes on the lowest step where its
 * label is not crossed by a later moment's pole and its bar does not meet a later flag: a staircase falling to the right.
 */
export function staircase(flags: readonly FlagReach[]): number[] {
  const steps: number[] = flags.map(() => 0)
  for (let i = flags.length - 1; i >= 0; i--) {
    const later = flags.slice(i + 1).map((other, k) => ({ other, step: steps[i + 1 + k] ?? 0 }))
    let step = 0
    while (later.some((l) => crosses(flags[i] as FlagReach, step, l.other, l.step))) step++
    steps[i] = step
  }
  return steps
}

function crosses(flag: FlagReach, step: number, other: FlagReach, otherStep: number): boolean {
  const poleInLabel = other.pole < flag.labelEnd + AIR && step <= otherStep
  const meet = step === otherStep && flag.left < other.right + AIR && other.left < flag.right + AIR
  return poleInLabel || meet
}

/** Figures of the window leave the flag where a table with them stands beside, or where it is narrow. */
const isShort = (input: HeatLineInput) => input.compact === true || input.width < 760
const clockOf = (moment: MomentFact, zone: string) => (moment.likely === null ? '' : formatClock(moment.likely, zone))

export function labelWidth(moment: MomentFact, input: HeatLineInput): number {
  const window = isShort(input) ? '' : windowWords(moment, input.zone)
  const figures = window ? 7 + textWidth(window, LETTERING.small) : 0
  return 11 + textWidth(clockOf(moment, input.zone), LETTERING.time) + textWidth(moment.name, LETTERING.name) + figures
}

export function flagsOf(input: HeatLineInput, facts: HeatFacts, axis: Scale): Flag[] {
  const [start = 0, end = 0] = axis.range()
  return facts.moments.map((moment) => {
    const pole = axis(moment.likely ?? 0)
    const labelEnd = pole + labelWidth(moment, input)
    const left = Math.max(start, Math.min(pole - 2, axis(moment.early ?? moment.likely ?? 0)))
    const right = Math.max(labelEnd, moment.late === null ? end : Math.min(end, axis(moment.late)))
    const window = isShort(input) ? '' : windowWords(moment, input.zone)
    return { moment, time: clockOf(moment, input.zone), window, reach: { pole, left, right, labelEnd } }
  })
}

/** Poles run from the label through the curve's knot to the shot they call: `feet` gives its upper edge. */
export function drawFlags(
  sheet: Sheet,
  facts: HeatFacts,
  frame: Frame,
  flags: readonly Flag[],
  steps: readonly number[],
  feet: ReadonlyMap<MomentId, number>,
): void {
  const placed = flags.map((flag, i) => ({
    ...flag,
    y: frame.flagTop + (frame.steps - 1 - (steps[i] ?? 0)) * frame.step,
    knot: knotY(facts, frame, flag.moment),
  }))
  for (const { reach, y, knot, moment } of placed)
    sheet.draw(line(reach.pole, y - 11, reach.pole, feet.get(moment.id) ?? knot, { stroke: 'ember', width: 1 }))
  for (const flag of placed) {
    drawWindow(sheet, frame, flag, flag.y)
    sheet.draw(circle(flag.reach.pole, flag.knot, 4.2, { fill: 'paper', stroke: 'ember', width: 2.25 }))
    const [x, y] = [flag.reach.pole, flag.knot]
    sheet.take({ left: x - 3, right: x + 3, top: y - 3, bottom: y + 3 })
    letterFlag(sheet, flag, flag.y)
  }
}

function drawWindow(sheet: Sheet, frame: Frame, { moment, reach }: Flag, y: number): void {
  const [, end = 0] = frame.axis.range()
  const late = moment.late === null ? end : Math.min(end, frame.axis(moment.late))
  if (late - reach.left > 4) sheet.draw(rect(reach.left, y + 5.5, late - reach.left, 3.5, { fill: 'ember' }))
  sheet.draw(rect(reach.pole - 1.25, y + 2, 2.5, 10.5, { fill: 'ember' }))
}

function letterFlag(sheet: Sheet, { moment, reach, time, window }: Flag, y: number): void {
  const nameX = reach.pole + 11 + textWidth(time, LETTERING.time)
  sheet.letter(lettering.start(reach.pole + 6, y, time, LETTERING.time))
  sheet.letter(lettering.start(nameX, y, moment.name, LETTERING.name))
  const windowX = nameX + textWidth(moment.name, LETTERING.name) + 7
  if (window) sheet.letter(lettering.start(windowX, y, window, LETTERING.small))
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
