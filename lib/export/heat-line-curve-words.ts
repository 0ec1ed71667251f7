import { celsius, formatTemp } from '../units'
import type { TextMark } from './drawing'
import { valueAt } from './heat-line-axis'
import { clockAt } from './heat-line-clock'
import type { HeatFacts } from './heat-line-facts'
import type { Frame } from './heat-line-frame'
import { LETTERING, lettering, type Sheet } from './heat-line-sheet'
import { textWidth } from './text-width'

/** Words that stand on the lines; there is no legend. Each takes the first place that is free. */
export function letterMeat(sheet: Sheet, facts: HeatFacts, frame: Frame): void {
  letterRead(sheet, facts, frame)
  const { minimum } = facts
  if (minimum) {
    const short = `${minimum.words.split(/[,:]/)[0]}: the authority’s minimum`
    letterLevel(sheet, frame, minimum.at, [minimum.words, short, `${minimum.words.split(/[,:]/)[0]} minimum`])
  }
  for (const target of [...facts.targets].sort((a, b) => b.at - a.at))
    letterLevel(sheet, frame, target.at, [target.words])
  letterStart(sheet, facts, frame)
  letterSliced(sheet, facts, frame)
  letterMorning(sheet, facts, frame)
}

/** On its line from the left on, then under it; a shorter wording where the full one finds no room. */
function letterLevel(sheet: Sheet, { left, right, meat }: Frame, at: number, wordings: readonly string[]): void {
  const y = meat.y(at)
  const places = wordings.flatMap((words) => {
    const room = right - left - textWidth(words, LETTERING.small) - 8
    const across = Array.from({ length: Math.max(0, Math.ceil(room / 24)) }, (_, i) => left + 4 + i * 24)
    const row = (dy: number) => across.map((x) => [lettering.start(x, y + dy, words, LETTERING.small)])
    return [...row(-3).slice(0, 6), ...row(11).slice(0, 6), ...row(-3).slice(6), ...row(11).slice(6)]
  })
  sheet.letterWhereFree(...places)
}

function letterStart(sheet: Sheet, facts: HeatFacts, { axis, left, meat }: Frame): void {
  const start = facts.meat[0]
  if (!start || start.at <= axis.domain[0] || start.at > axis.domain[1]) return
  const words = `${start.likely < 10 ? 'from the fridge' : 'starts at'}, ${formatTemp(celsius(start.likely), facts.units)}`
  const x = axis(start.at) - 6
  if (x - textWidth(words, LETTERING.small) < left) return
  sheet.letterWhereFree(
    ...[-6, 14, -22].map((dy) => [lettering.end(x, meat.y(start.likely) + dy, words, LETTERING.small)]),
  )
}

/** "30 °C, read 18:58" at the last reading. */
function letterRead(sheet: Sheet, facts: HeatFacts, { axis, right, meat }: Frame): void {
  const last = facts.day?.read.at(-1)
  if (!last || last.at < axis.domain[0] || last.at > axis.domain[1]) return
  const words = formatTemp(celsius(last.level), facts.units)
  const when = `read ${clockAt(facts.clock, last.at)}`
  const [x, y] = [axis(last.at), meat.y(last.level)]
  const wide = Math.max(textWidth(words, LETTERING.read), textWidth(when, LETTERING.small))
  const right2 = (dx: number, dy: number) => [
    lettering.start(x + dx, y + dy, words, LETTERING.read),
    lettering.start(x + dx, y + dy + 15, when, LETTERING.small),
  ]
  const left2 = (dy: number) => [
    lettering.end(x - 10, y + dy, words, LETTERING.read),
    lettering.end(x - 10, y + dy + 15, when, LETTERING.small),
  ]
  const fits = x + 26 + wide < right
  sheet.letterWhereFree(
    ...(fits ? [right2(10, 24), right2(10, 38), right2(18, 52)] : []),
    ...[-34, -48, 26, 40].map(left2),
  )
}

function letterSliced(sheet: Sheet, facts: HeatFacts, frame: Frame): void {
  const slice = facts.moments.find((m) => m.id === 'first-slice')?.likely
  const end = facts.meat.at(-1)
  if (!slice || !end || end.at > frame.axis.domain[1] || end.at < frame.axis.domain[0]) return
  const words = `about ${formatTemp(celsius(facts.sliced.likely), facts.units)}`
  const { low, high } = facts.sliced
  const [from, to] = [low, high].map((level) => formatTemp(celsius(level), facts.units))
  const range = from === to ? 'when sliced' : `${from?.split(' ')[0]} to ${to} when sliced`
  const x = frame.axis(end.at) + 10
  const y = frame.meat.y(end.likely)
  const at = (dx: number, dy: number) => [
    lettering.start(x + dx, y + dy, words, LETTERING.name),
    lettering.start(x + dx, y + dy + 15, range, LETTERING.small),
  ]
  const room = frame.right - x - textWidth(range, LETTERING.small)
  const across = room >= 0 ? [0, 12, Math.min(40, room)].filter((dx) => dx <= room) : [room]
  sheet.letterWhereFree(...[3, 24, 40, 56, 72].flatMap((dy) => across.map((dx) => at(dx, dy))))
}

/** Once, on the dashed line, where it stands clear. */
function letterMorning(sheet: Sheet, { day }: HeatFacts, { axis, left, right, meat }: Frame): void {
  const [from, to] = axis.domain
  const shown = (day?.morning ?? []).filter(({ at }) => at > from && at < to)
  const words = 'forecast this morning'
  const wide = textWidth(words, LETTERING.small)
  const at = [0.5, 0.35, 0.65, 0.2, 0.8].flatMap((share) => shown[Math.floor(shown.length * share)] ?? [])
  const places = at.flatMap((point): TextMark[][] => {
    const [x, y] = [axis(point.at), meat.y(point.level)]
    const before = x - wide - 8 > left ? [[lettering.end(x - 8, y - 8, words, LETTERING.small)]] : []
    const after = x + wide + 8 < right ? [[lettering.start(x + 8, y + 18, words, LETTERING.small)]] : []
    return [...before, ...after]
  })
  sheet.letterWhereFree(...places)
}

export function letterCooker(sheet: Sheet, facts: HeatFacts, frame: Frame): void {
  const { axis, cooker } = frame
  const likely = (id: string) => facts.moments.find((m) => m.id === id)?.likely
  const on = likely('meat-on')
  const pull = likely('pull') ?? facts.cooker.at(-1)?.at
  if (on && pull) {
    const [start, end] = [Math.max(on, axis.domain[0]), Math.min(pull, axis.domain[1])]
    const held = roastLevel(facts, on, pull)
    const words = heldWords(held, facts)
    const half = textWidth(words, LETTERING.small) / 2
    const across = [0.45, 0.3, 0.6, 0.15, 0.75].map((share) => axis(start + (end - start) * share))
    const inside = end > start ? across.filter((x) => x - half > frame.left && x + half < frame.right) : []
    const places = [-8, 15, -20].flatMap((dy) => inside.map((x) => [x, cooker.y(held) + dy] as const))
    sheet.letterWhereFree(
      ...places
        .filter(([, y]) => y > cooker.top - 4 && y < cooker.bottom + 2)
        .map(([x, y]) => [lettering.middle(x, y, words, LETTERING.small)]),
    )
  }
  letterVents(sheet, facts, frame)
}

function letterVents(sheet: Sheet, facts: HeatFacts, { axis, cooker, right }: Frame): void {
  const end = facts.cooker.at(-1)
  const opens = facts.moments.some(({ id }) => id === 'vents-open')
  if (facts.searAt === null || !end || !opens || end.at < axis.domain[0] || end.at > axis.domain[1]) return
  const words = `vents wide open, ${formatTemp(facts.searAt, facts.units)}`
  const [x, y] = [axis(end.at), cooker.y(end.likely)]
  const after = [10, 22].map((dx) => lettering.start(x + dx, y + 4, words, LETTERING.small))
  const fitting = after.filter((mark) => mark.x + textWidth(words, LETTERING.small) <= right)
  const before = [-6, -18].map((dy) => lettering.end(x - 4, y + dy, words, LETTERING.small))
  sheet.letterWhereFree(...[...fitting, ...before].map((mark) => [mark]))
}

function roastLevel(facts: HeatFacts, on: number, pull: number): number {
  const steps = Array.from({ length: 40 }, (_, i) => on + ((i + 0.5) / 40) * (pull - on))
  const levels = steps.flatMap((at) => valueAt(facts.cooker, at as never)?.likely ?? [])
  return levels.sort((a, b) => a - b)[Math.floor(levels.length / 2)] ?? facts.roastAt
}
/** A difference below this is the cooker's own noise, °C. */
const TOLD_APART = 3
function heldWords(held: number, { roastAt, units }: HeatFacts): string {
  const dial = formatTemp(roastAt, units)
  if (Math.abs(held - roastAt) <= TOLD_APART) return `held at ${dial}`
  return `holds ${formatTemp(celsius(held), units)}; the dial says ${dial}`
}
