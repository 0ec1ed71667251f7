import { celsius, formatTemp } from '../units'
import { circle, type Drawing, hatch, line, path, rect, tenth } from './drawing'
import {
  axisOf,
  curvePaths,
  isInPlot,
  meatScale,
  pxPerMinute,
  type Scale,
  type TickedScale,
  timeAxis,
  within,
} from './heat-line-axis'
import { stackInBlocks } from './heat-line-blocks'
import { clockAt, dayAt, midnights, roundTimes } from './heat-line-clock'
import { drawBand, drawKnown, drawMorning, knotLevel, knownOf, LEFT_WHOLE } from './heat-line-curves'
import { duskStrokes, GOLD, heightScale, stars, sunAt, sunPath } from './heat-line-daylight'
import type { HeatFacts, HeatView, MealFact, MomentFact } from './heat-line-facts'
import { drawKnot, tick } from './heat-line-flags'
import { DOTTED, EDGE, HAIR, highestOf, nowIn } from './heat-line-frame'
import { LETTERING, lettering, newSheet, type Sheet } from './heat-line-sheet'
import { heatTables } from './heat-line-table'
import { neverWords, windowWords } from './heat-line-words'
import { cutWords, textWidth } from './text-width'

/** Columns of the standing picture, px from the left. */
const SUN = { left: 38, width: 16 }
const MEAT = { left: 62, width: 88 }
const LABEL = { elbow: 153, left: 162, words: 166 }
const TOP = 30
/** At most so much, so that a short cook is not drawn small nor a night endless. */
const PX_PER_MINUTE = { usual: 2.06, most: 8, shortest: 440, longest: 1500 }
const ROW = { moment: 39, certain: 25, meal: 32, now: 32 }
const BIG = { time: { ...LETTERING.time, size: 17 }, name: { ...LETTERING.name, size: 15 } } as const
const WINDOW = { ...LETTERING.small, size: 13.5 } as const
const WHO = { ...LETTERING.call, size: 13.5 } as const

type Item = { readonly at: number; readonly height: number } & (
  | { readonly kind: 'moment'; readonly moment: MomentFact }
  | { readonly kind: 'meal'; readonly meal: MealFact }
  | { readonly kind: 'now' }
)

/** Time runs down, so that labels lie flat on a phone: sun, meat, and every moment with who catches it. */
export function drawStanding(view: HeatView, facts: HeatFacts): Drawing {
  const { from, to } = view.span ?? facts.heat
  const minutes = (to - from) / 60_000
  const { usual, most, shortest, longest } = PX_PER_MINUTE
  const px = Math.min(most, Math.max(Math.min(usual, longest / minutes), shortest / minutes))
  const bottom = TOP + minutes * px
  const axis = timeAxis(from, to, TOP, bottom)
  const meat = meatScale(highestOf(facts), facts.units, MEAT.left, MEAT.left + MEAT.width)
  const now = nowIn(view, axis)
  const items = itemsOf(facts, axis, now)
  const room = items.reduce((sum, { height }) => sum + height, 0)
  const tops = stackInBlocks(items, TOP - 8, Math.max(bottom + 20, TOP + room))
  const sheet = newSheet(view.width)
  drawGrid(sheet, facts, axis)
  drawSun(sheet, facts, axis)
  drawMeatDown(sheet, view, facts, axis, meat)
  for (const [i, item] of items.entries()) {
    const top = tops[i] ?? 0
    if (item.kind === 'meal') drawMealRow(sheet, view, facts, item.meal, top)
    else if (item.kind === 'now') drawNowRow(sheet, view, facts, item.at, top)
    else drawMoment(sheet, view, facts, item, top, meat.y)
  }
  letterLight(sheet, facts, axis)
  const end = Math.max(bottom, ...items.map((item, i) => (tops[i] ?? 0) + item.height))
  facts.never.forEach((m, i) => {
    const words = cutWords(`${m.name}: ${neverWords(m.reached)}`, view.width, LETTERING.name)
    sheet.letter(lettering.start(0, end + 18 + i * 18, words, LETTERING.name))
  })
  return {
    width: view.width,
    height: tenth(end + 14 + facts.never.length * 18),
    title: facts.title,
    marks: sheet.marks(),
    tables: heatTables(facts),
    axis: axisOf(axis, true),
    plot: { top: SUN.left, bottom: LABEL.elbow },
  }
}

function itemsOf(facts: HeatFacts, axis: Scale, now: number | null): Item[] {
  const shown = facts.moments.filter(({ likely }) => likely !== null && isInPlot(axis, likely))
  const moments = shown.map((moment): Item => {
    const height = windowWords(moment, facts.clock) ? ROW.moment : ROW.certain
    return { kind: 'moment', moment, at: axis(moment.likely ?? 0), height }
  })
  const middle = ({ start, end }: MealFact) => (start + end) / 2
  const meals = (facts.crew?.meals ?? [])
    .filter((meal) => isInPlot(axis, middle(meal)))
    .map((meal): Item => ({ kind: 'meal', meal, at: axis(middle(meal)), height: ROW.meal }))
  const here: Item[] = now === null ? [] : [{ kind: 'now', at: now, height: ROW.now }]
  return [...moments, ...meals, ...here].sort((a, b) => a.at - b.at)
}

/** "cameras A, B". */
function whoCatches({ crew }: HeatFacts, moment: MomentFact): string {
  const called = (crew?.called ?? []).filter((call) => call.moment === moment.id)
  const cameras = called.flatMap(({ shot }) => crew?.shots.find(({ id }) => id === shot)?.cameras ?? [])
  const unique = [...new Set(cameras)].sort()
  return unique.length === 0 ? '' : `${unique.length > 1 ? 'cameras' : 'camera'} ${unique.join(', ')}`
}

/** The column is narrow: "Sun 16", "6 pm", and between whole hours "6:30". */
const shortDay = (day: string) => `${day.slice(0, 3)} ${/\d+/.exec(day)?.[0] ?? ''}`
const shortClock = (clock: string) => clock.replace(/:00( [ap]m)$/, '$1').replace(/(:\d\d) [ap]m$/, '$1')

function drawGrid(sheet: Sheet, facts: HeatFacts, axis: Scale): void {
  const [from, to] = axis.domain
  const nights = midnights(facts.clock, from, to)
  for (const at of roundTimes(facts.clock, from, to, pxPerMinute(axis), 40)) {
    const y = axis(at)
    const night = nights.includes(at)
    sheet.draw(line(SUN.left, y, MEAT.left + MEAT.width + 3, y, night ? EDGE : HAIR))
    const words = night ? shortDay(dayAt(facts.clock, at)) : shortClock(clockAt(facts.clock, at))
    sheet.letter(lettering.start(0, y + 5, words, night ? { ...LETTERING.day, size: 13 } : LETTERING.axis))
  }
  sheet.letter(lettering.middle(SUN.left + 8, 20, 'sun', LETTERING.small))
}

function drawSun(sheet: Sheet, facts: HeatFacts, axis: Scale): void {
  const [top, bottom] = axis.range
  const height = heightScale(facts, SUN.left, SUN.left + SUN.width)
  const courses = sunPath(facts, axis, height, true)
  sheet.draw(...courses.map(({ ground }) => path(ground, { fill: 'leaf' })))
  for (const part of facts.light) {
    const y = Math.max(top, axis(part.start))
    const long = Math.min(bottom, axis(part.end)) - y
    if (long <= 0.5) continue
    if (part.light === 'golden') sheet.draw(path(hatch(SUN.left, y, SUN.width, long, GOLD.gap - 0.4), GOLD.how))
    else if (part.light === 'twilight') {
      const strokes = duskStrokes(axis, part).map((at) => `M${SUN.left} ${tenth(at)}h${SUN.width}`)
      if (strokes.length > 0) sheet.draw(path(strokes.join(''), { stroke: 'ink-2', width: 1 }))
    } else {
      sheet.draw(rect(SUN.left, y, SUN.width, long, { fill: 'night', stroke: 'edge', width: 0.75 }))
      for (const [dy, dx, r] of stars(long + 40, SUN.width + 4))
        if (dy - 46 < long - 4) sheet.draw(circle(SUN.left + dx - 2, y + Math.max(4, dy - 46), r, { fill: 'star' }))
    }
  }
  sheet.draw(...courses.map((course) => path(course.line, { stroke: 'ink', width: 1.5 })))
  sheet.draw(line(SUN.left, TOP, SUN.left, bottom, EDGE))
}

function drawMeatDown(sheet: Sheet, view: HeatView, facts: HeatFacts, axis: Scale, meat: TickedScale): void {
  const [, bottom] = axis.range
  for (const [i, at] of [...meat.ticks].reverse().entries()) {
    sheet.draw(line(at.y, TOP - 6, at.y, bottom, HAIR))
    const unit = facts.units === 'us' ? ' °F' : ' °C'
    sheet.letterWhereFree([lettering.middle(at.y, 20, i === 0 ? at.words + unit : at.words, LETTERING.small)])
  }
  if (facts.minimum) sheet.draw(line(meat.y(facts.minimum.at), TOP - 2, meat.y(facts.minimum.at), bottom, DOTTED))
  for (const target of facts.targets) {
    const end = facts.meat.find((p) => p.likely >= target.at)?.at
    const to = Math.min(bottom, Math.max(TOP, end === undefined ? bottom : axis(end)))
    sheet.draw(line(meat.y(target.at), TOP - 2, meat.y(target.at), to, EDGE))
  }
  const known = knownOf(facts.meat, facts.day?.read ?? [], view.now ?? null, axis.domain)
  drawBand(sheet, known.forecast, axis, meat.y, true)
  drawMorning(sheet, facts, axis, meat.y, true)
  drawKnown(sheet, known, axis, meat.y, true)
  const whole = curvePaths(within(facts.whole, ...axis.domain), axis, meat.y, true).likely
  if (whole) sheet.draw(path(whole, LEFT_WHOLE))
}

function drawMoment(
  sheet: Sheet,
  view: HeatView,
  facts: HeatFacts,
  item: Item & { kind: 'moment' },
  top: number,
  level: Scale,
): void {
  const { moment } = item
  const window = windowWords(moment, facts.clock)
  const baseline = top + (item.height === ROW.moment ? 17 : 17)
  const from = level(knotLevel(facts, moment, false))
  const elbow = `M${tenth(from)} ${tenth(item.at)}H${LABEL.elbow}L${LABEL.left} ${tenth(baseline - 5)}`
  sheet.draw(path(elbow, { stroke: moment.marked ? 'ink-3' : 'ember', width: 1 }))
  drawKnot(sheet, from, item.at, moment)
  const time = clockAt(facts.clock, moment.likely ?? 0)
  sheet.letter(lettering.start(LABEL.words, baseline, time, { ...BIG.time, role: moment.marked ? 'ink' : 'ember' }))
  const after = LABEL.words + textWidth(time, BIG.time) + 5
  if (moment.marked) sheet.draw(path(tick(after - 1, baseline), { stroke: 'ink', width: 1.75, round: true }))
  const nameX = moment.marked ? after + 13 : after
  sheet.letter(lettering.start(nameX, baseline, cutWords(moment.name, view.width - nameX, BIG.name), BIG.name))
  if (window)
    sheet.letter(
      lettering.start(LABEL.words, baseline + 15, cutWords(window, view.width - LABEL.words, WINDOW), WINDOW),
    )
  const who = whoCatches(facts, moment)
  const end = lettering.end(view.width, window ? baseline + 15 : baseline, who, WHO)
  if (who) sheet.letterWhereFree([end], [{ ...end, text: who.replace(/^cameras? /, '') }])
}

function drawMealRow(sheet: Sheet, view: HeatView, { clock }: HeatFacts, meal: MealFact, top: number): void {
  const [start, end] = [clockAt(clock, meal.start), clockAt(clock, meal.end)]
  sheet.draw(rect(LABEL.words, top + 3, view.width - LABEL.words - 1, ROW.meal - 6, { stroke: 'edge', width: 1 }))
  sheet.letter(lettering.start(LABEL.words + 7, top + 21, `meal ${start} to ${end}`, LETTERING.name))
}

/** Now: a line over the columns, and a tag in line with the labels. */
function drawNowRow(sheet: Sheet, view: HeatView, facts: HeatFacts, at: number, top: number): void {
  const last = facts.day?.read.at(-1)
  const clock = clockAt(facts.clock, view.now ?? 0)
  const read = last ? `, probe ${formatTemp(celsius(last.level), facts.units)}` : sunWords(facts, view.now ?? 0)
  const room = view.width - LABEL.words - 8
  const words = cutWords(`now ${clock}${read}`, room - 14, LETTERING.now)
  const middle = top + ROW.now / 2
  const elbow = `M${SUN.left - 4} ${tenth(at)}H${LABEL.elbow}L${LABEL.words} ${tenth(middle)}`
  sheet.draw(path(elbow, { stroke: 'ember', width: 2.25 }))
  sheet.draw(rect(LABEL.words, top + 4, view.width - LABEL.words, ROW.now - 8, { fill: 'ember' }))
  sheet.letter(lettering.start(LABEL.words + 8, middle + 5, words, LETTERING.now, false))
}
function sunWords(facts: HeatFacts, now: number): string {
  const deg = sunAt(facts, now)
  return deg === null || deg < 0 ? '' : `, sun ${Math.round(deg)}° up`
}

const LIGHT_WORDS: Readonly<Record<string, string>> = { 'golden hour': 'gold' }
function letterLight(sheet: Sheet, facts: HeatFacts, axis: Scale): void {
  for (const part of facts.light) {
    if (!isInPlot(axis, part.start) || part.start === axis.domain[0]) continue
    const words = `${LIGHT_WORDS[part.name] ?? part.name} ${clockAt(facts.clock, part.start)}`
    const small = { ...LETTERING.small, size: 12 } as const
    const y = axis(part.start)
    if (y + 26 > axis.range[1]) sheet.letterWhereFree([lettering.start(59, y - 4, words, small)])
    else sheet.letterWhereFree(...[4, 14, 24].map((dy) => [lettering.start(59, y + dy, words, small)]))
  }
}
