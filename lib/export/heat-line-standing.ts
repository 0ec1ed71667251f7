import type { Call, Meal } from '../day/layout'
import { formatClock, fromIso } from '../plan/clock'
import { instant } from '../units'
import { circle, type Drawing, hatch, line, path, rect, tenth } from './drawing'
import {
  axisOf,
  clockOffset,
  curvePaths,
  hours,
  meatScale,
  type Scale,
  type TickedScale,
  timeAxis,
  valueAt,
} from './heat-line-axis'
import { stackInBlocks } from './heat-line-blocks'
import { LEFT_WHOLE } from './heat-line-curves'
import { HATCHES, sunPath } from './heat-line-daylight'
import type { HeatFacts, HeatLineInput, MomentFact } from './heat-line-facts'
import { EDGE, HAIR, highest } from './heat-line-frame'
import { LETTERING, lettering, newSheet, type Sheet } from './heat-line-sheet'
import { heatTables } from './heat-line-table'
import { neverWords, windowWords } from './heat-line-words'
import { textWidth } from './text-width'

/** Columns of the standing picture, px from the left. */
const SUN = { left: 38, width: 16 }
const MEAT = { left: 62, width: 104 }
const LABEL = { elbow: 168, left: 178, words: 182 }
const TOP = 30
const PX_PER_MINUTE = 2.06
const ROW = { moment: 38, certain: 24, meal: 32 }
const BIG = { time: { ...LETTERING.time, size: 17 }, name: { ...LETTERING.name, size: 15 } } as const
const WINDOW = { ...LETTERING.small, size: 13.5 } as const
const WHO = { ...LETTERING.call, size: 13.5 } as const

type Item =
  | { readonly kind: 'moment'; readonly moment: MomentFact; readonly at: number; readonly height: number }
  | { readonly kind: 'meal'; readonly meal: Meal; readonly at: number; readonly height: number }

/** Time runs down, so that labels lie flat on a phone: sun, meat, and every moment with who catches it. */
export function drawStanding(input: HeatLineInput, facts: HeatFacts): Drawing {
  const bottom = TOP + ((facts.to - facts.from) / 60_000) * PX_PER_MINUTE
  const axis = timeAxis(facts.from, facts.to, TOP, bottom)
  const meat = meatScale(highest(facts.meat, input.minimum?.at), input.units, MEAT.left, MEAT.left + MEAT.width)
  const items = itemsOf(input, facts, axis)
  const tops = stackInBlocks(items, TOP - 8, bottom + 60)
  const sheet = newSheet()
  drawGrid(sheet, input, facts, axis)
  drawSun(sheet, facts, axis)
  drawMeatDown(sheet, input, facts, axis, meat)
  for (const [i, item] of items.entries()) {
    if (item.kind === 'meal') drawMealRow(sheet, input, item.meal, tops[i] ?? 0)
    else drawMoment(sheet, input, facts, item, tops[i] ?? 0, meat.y)
  }
  letterLight(sheet, input, facts, axis)
  const end = Math.max(bottom, ...items.map((item, i) => (tops[i] ?? 0) + item.height))
  facts.never.forEach((m, i) => {
    sheet.letter(lettering.start(MEAT.left, end + 18 + i * 18, `${m.name}: ${neverWords(m.reached)}`, LETTERING.name))
  })
  const height = end + 14 + facts.never.length * 18
  return {
    width: input.width,
    height: tenth(height),
    title: input.title,
    marks: sheet.marks(),
    tables: heatTables(input, facts),
    axis: axisOf(axis, true),
  }
}

function itemsOf(input: HeatLineInput, facts: HeatFacts, axis: Scale): Item[] {
  const moments = facts.moments.map((moment): Item => {
    const height = windowWords(moment, input.zone) ? ROW.moment : ROW.certain
    return { kind: 'moment', moment, at: axis(moment.likely ?? 0), height }
  })
  const meals = mealsOf(input).map((meal): Item => {
    const middle = (fromIso(meal.start) + fromIso(meal.end)) / 2
    return { kind: 'meal', meal, at: axis(middle), height: ROW.meal }
  })
  return [...moments, ...meals].sort((a, b) => a.at - b.at)
}
/** Meals taken together once. */
const mealsOf = ({ layout }: HeatLineInput) =>
  (layout?.meals ?? []).filter((meal, i, all) => all.findIndex((m) => m.start === meal.start) === i)

/** "cameras A, B". */
function whoCatches({ layout, cooks }: HeatLineInput, moment: MomentFact): string {
  const first = cooks[0]?.forecast.cook.id
  const calls = (layout?.calls ?? []).filter((c: Call) => c.moment === moment.id && c.cook === first)
  const cameras = calls.flatMap((call) => layout?.shots.find((shot) => shot.id === call.for)?.camera ?? [])
  const unique = [...new Set(cameras)].sort()
  if (unique.length === 0) return ''
  return `${unique.length > 1 ? 'cameras' : 'camera'} ${unique.join(', ')}`
}

function drawGrid(sheet: Sheet, input: HeatLineInput, facts: HeatFacts, axis: Scale): void {
  for (const at of hours(axis, clockOffset(facts.from, input.zone), 40)) {
    const y = axis(at)
    sheet.draw(line(SUN.left, y, MEAT.left + MEAT.width + 4, y, HAIR))
    sheet.letter(lettering.start(0, y + 5, formatClock(at, input.zone), LETTERING.axis))
  }
  sheet.letter(lettering.middle(SUN.left + 8, 20, 'sun', LETTERING.small))
}

function drawSun(sheet: Sheet, facts: HeatFacts, axis: Scale): void {
  const [, bottom = 0] = axis.range()
  for (const part of facts.light) {
    const y = axis(part.start)
    const height = Math.min(bottom, axis(part.end)) - y
    if (part.light === 'dark') sheet.draw(rect(SUN.left, y, SUN.width, height, { fill: 'ink' }))
    else {
      const { gap, how } = HATCHES[part.light]
      sheet.draw(path(hatch(SUN.left, y, SUN.width, height, gap - 0.4), how))
    }
  }
  const full = Math.max(44, ...facts.sun.map((s) => s.deg))
  const d = sunPath(facts, axis, (deg) => SUN.left + (Math.max(0, deg) / full) * SUN.width, true)
  if (d) sheet.draw(path(d, { stroke: 'ink', width: 1.5 }))
  sheet.draw(line(SUN.left, TOP, SUN.left, bottom, EDGE))
}

function drawMeatDown(sheet: Sheet, input: HeatLineInput, facts: HeatFacts, axis: Scale, meat: TickedScale): void {
  const [, bottom = 0] = axis.range()
  meat.ticks.forEach((tick, i) => {
    sheet.draw(line(tick.y, TOP - 6, tick.y, bottom, HAIR))
    const unit = input.units === 'us' ? ' °F' : ' °C'
    sheet.letter(
      lettering.middle(tick.y, 20, i === meat.ticks.length - 1 ? tick.words + unit : tick.words, LETTERING.small),
    )
  })
  const paths = curvePaths(facts.meat, axis, meat.y, true)
  sheet.draw(path(paths.band, { fill: 'band' }), path(paths.low, EDGE), path(paths.high, EDGE))
  sheet.draw(path(paths.likely, { stroke: 'ink', width: 1.75 }))
  const whole = curvePaths(facts.whole, axis, meat.y, true).likely
  if (whole) sheet.draw(path(whole, LEFT_WHOLE))
}
function drawMoment(
  sheet: Sheet,
  input: HeatLineInput,
  facts: HeatFacts,
  item: Item & { kind: 'moment' },
  top: number,
  level: Scale,
): void {
  const { moment } = item
  const windowText = windowWords(moment, input.zone)
  const who = whoCatches(input, moment)
  const baseline = top + (item.height === ROW.moment ? 17 : 16)
  const from = knotX(facts, moment, level)
  const elbow = `M${tenth(from)} ${tenth(item.at)}H${LABEL.elbow}L${LABEL.left} ${tenth(top + item.height / 2)}`
  sheet.draw(path(elbow, { stroke: 'ember', width: 1 }))
  sheet.draw(circle(from, item.at, 3.8, { fill: 'paper', stroke: 'ember', width: 2.25 }))
  const time = moment.likely === null ? '' : formatClock(moment.likely, input.zone)
  const nameX = LABEL.words + textWidth(time, BIG.time) + 5
  sheet.letter(lettering.start(LABEL.words, baseline, time, BIG.time))
  sheet.letter(lettering.start(nameX, baseline, moment.name, BIG.name))
  if (windowText) sheet.letter(lettering.start(LABEL.words, baseline + 15, windowText, WINDOW))
  const whoY = windowText ? baseline + 15 : baseline
  if (who) sheet.letterWhereFree([lettering.end(input.width, whoY, who, WHO)])
}

/** Before the meat is on the knots stand at its first temperature. */
function knotX(facts: HeatFacts, moment: MomentFact, level: Scale): number {
  const at = moment.likely ?? instant(0)
  const points = [...facts.meat, ...facts.whole]
  const last = points.at(-1)
  const point = valueAt(points, at) ?? (last && at > last.at ? last : points[0])
  return level(point?.likely ?? 0)
}

function drawMealRow(sheet: Sheet, input: HeatLineInput, meal: Meal, top: number): void {
  const [start, end] = [meal.start, meal.end].map((iso) => formatClock(fromIso(iso), input.zone))
  sheet.draw(rect(LABEL.words, top + 3, input.width - LABEL.words - 1, ROW.meal - 6, { stroke: 'edge', width: 1 }))
  sheet.letter(lettering.start(LABEL.words + 7, top + 21, `meal ${start} to ${end}`, LETTERING.name))
}

const LIGHT_WORDS: Readonly<Record<string, string>> = { 'golden hour': 'gold' }
function letterLight(sheet: Sheet, input: HeatLineInput, facts: HeatFacts, axis: Scale): void {
  for (const part of facts.light) {
    if (part.start <= facts.from) continue
    const words = `${LIGHT_WORDS[part.name] ?? part.name} ${formatClock(part.start, input.zone)}`
    const y = axis(part.start) + 4
    const small = { ...LETTERING.small, size: 12 } as const
    sheet.letterWhereFree([lettering.start(59, y, words, small)], [lettering.start(59, y + 10, words, small)])
  }
}
