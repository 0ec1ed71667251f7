import { line, rect } from './drawing'
import { clockAt, type ZoneClock } from './heat-line-clock'
import { EDGE, type Frame, HAIR } from './heat-line-frame'
import { BOX, type Box, CAMERA_LANE, type Lane } from './heat-line-lane-boxes'
import { bottomOf, type Lanes, type SideBar, type Twin } from './heat-line-lanes'
import { LETTERING, lettering, type Sheet } from './heat-line-sheet'
import { cutWords, fitWords, textWidth } from './text-width'

const NAME = LETTERING.small

export function drawLaneGround(sheet: Sheet, { top, crewBottom, tentative }: Lanes): void {
  if (!tentative) return
  const { x1, x2 } = tentative
  sheet.draw(rect(x1, top - 14, x2 - x1, crewBottom - top + 14, { fill: 'leaf' }))
  sheet.draw(line(x1, top - 14, x2, top - 14, { stroke: 'cool', width: 1.25, dash: [2, 3] }))
}

/** What stands in the lanes; names come after it, so that they keep off every box. */
export function drawLanes(sheet: Sheet, all: Lanes, frame: Frame, clock: ZoneClock): void {
  for (const lane of all.lanes) drawRow(sheet, lane, frame)
  for (const meal of all.meals) drawMeal(sheet, meal)
  for (const lane of all.lanes) for (const box of lane.boxes) drawBox(sheet, box, lane)
  for (const meal of all.meals) letterMeal(sheet, meal, clock)
  for (const lane of all.lanes)
    for (const [i, box] of lane.boxes.entries()) letterBox(sheet, box, lane, lane.boxes.slice(i + 1), frame)
  for (const twin of all.twins) drawTwin(sheet, twin, frame)
  for (const side of all.sides) drawSide(sheet, side, frame)
  sheet.letter(lettering.start(0, all.lidY - 1, 'lid open', LETTERING.lane))
  for (const lid of all.lids) sheet.draw(rect(lid.x1, all.lidY - 10, lid.x2 - lid.x1, 10, { fill: 'ink' }))
  sheet.draw(line(frame.left, all.lidY, frame.right, all.lidY, EDGE))
  if (all.tentative) letterTentative(sheet, all.tentative, all.top)
}

function letterTentative(sheet: Sheet, { x1, x2 }: NonNullable<Lanes['tentative']>, top: number): void {
  const words = ['tentative: called live', 'called live']
  const across = Array.from({ length: Math.max(1, Math.floor((x2 - x1) / 30)) }, (_, i) => x1 + 6 + i * 30)
  const places = words.flatMap((each) =>
    across
      .filter((x) => x + textWidth(each, LETTERING.call) <= x2)
      .map((x) => [lettering.start(x, top - 2, each, LETTERING.call)]),
  )
  sheet.letterWhereFree(...places)
}

const laneName = (name: string, frame: Frame) => cutWords(name, frame.left - 8, LETTERING.lane)

function drawRow(sheet: Sheet, lane: Lane, frame: Frame): void {
  const bottom = bottomOf(lane)
  const baseline = lane.boxes.length > 0 || lane.height === CAMERA_LANE ? lane.top + 19 : lane.top + 17
  sheet.letter(lettering.start(0, baseline, laneName(lane.name, frame), LETTERING.lane))
  sheet.draw(line(frame.left, bottom, frame.right, bottom, HAIR))
  for (const bar of lane.bars) {
    const dash = bar.live ? { dash: [6, 4] } : {}
    sheet.draw(line(bar.x1, lane.top + 12, bar.x2, lane.top + 12, { stroke: 'cool', width: 3, ...dash }))
  }
}

/** Solid is fixed, outline is free, dashed is called live; what is done is grey. */
function drawBox(sheet: Sheet, box: Box, lane: Lane): void {
  const solid = !box.live && !box.past && box.name === null
  const how = {
    fill: solid ? ('cool' as const) : ('paper' as const),
    stroke: box.past ? ('ink-3' as const) : ('cool' as const),
    width: 1.25,
    ...(box.live && !box.past ? { dash: [4, 2.5] } : {}),
  }
  const wide = box.x2 - box.x1
  sheet.draw(rect(box.x1, lane.top + 6, wide, BOX.height, how))
  sheet.take({ left: box.x1 - 1, right: box.x2 + 1, top: lane.top + 5, bottom: lane.top + 24 })
  const role = solid ? ('paper' as const) : box.past ? ('ink-2' as const) : ('cool' as const)
  const number = { ...LETTERING.number, role }
  const fits = textWidth(box.number, number) <= wide - 2
  if (fits) sheet.letter(lettering.middle(box.x1 + wide / 2, lane.top + 19, box.number, number, false))
}

/** The longest beginning of a name that keeps off its neighbour and whatever crosses the lane. */
function letterBox(sheet: Sheet, box: Box, lane: Lane, later: readonly Box[], frame: Frame): void {
  if (!box.name) return
  const next = later.find((other) => other.name !== null)
  const room = Math.min(160, (next?.x1 ?? frame.right + 6) - box.x1 - 6)
  const shorter = [room, room * 0.75, room * 0.5].flatMap((wide) => fitWords(box.name ?? '', wide, NAME) ?? [])
  const places = [...new Set(shorter)].map((name) => [lettering.start(box.x1, lane.top + 34, name, NAME)])
  sheet.letterWhereFree(...places)
}

function drawMeal(sheet: Sheet, { x1, x2, top, bottom }: Lanes['meals'][number]): void {
  sheet.draw(rect(x1, top, x2 - x1, bottom - top, { fill: 'paper', stroke: 'edge', width: 1 }))
}

/** In the middle where it is free, else beneath or above; then nothing else stands in the box. */
function letterMeal(sheet: Sheet, { x1, x2, top, bottom, meal }: Lanes['meals'][number], clock: ZoneClock): void {
  const time = clockAt(clock, meal.start)
  const word = ['meal', 'm.'].find((w) => textWidth(w, LETTERING.name) <= x2 - x1 - 4)
  const [middle, centre] = [(x1 + x2) / 2, (top + bottom) / 2]
  const withTime = bottom - top >= 34 && textWidth(time, LETTERING.small) <= x2 - x1 - 4
  const at = (y: number) => lettering.middle(middle, y, word ?? '', LETTERING.name)
  const both = (y: number) => [at(y), lettering.middle(middle, y + 15, time, LETTERING.small)]
  const rows = [0, 26, -26, 40, -40].map((dy) => centre + dy).filter((y) => y > top + 12 && y < bottom - 18)
  if (word)
    sheet.letterWhereFree(...(withTime ? rows.map((y) => both(y - 2)) : []), ...rows.map((y) => [at(y + 4)]), [
      at(centre + 4),
    ])
  sheet.take({ left: x1, right: x2, top, bottom })
}

/** A second roast is one line: thick on the heat, thin at rest, a stop where it is sliced. */
function drawTwin(sheet: Sheet, twin: Twin, frame: Frame): void {
  sheet.letter(lettering.start(0, twin.y + 4, laneName(twin.name, frame), LETTERING.lane))
  sheet.draw(line(twin.on, twin.y, twin.off, twin.y, { stroke: 'edge', width: 4 }))
  sheet.draw(line(twin.off, twin.y, twin.end, twin.y, { stroke: 'ink-2', width: 1.25 }))
  sheet.draw(line(twin.end, twin.y - 5, twin.end, twin.y + 5, { stroke: 'ink-2', width: 1.25 }))
  letterBeside(sheet, twin.off, twin.y, 'rests', frame)
}

/** A side shares the fire: thick while it is in, a stop where it comes off. */
function drawSide(sheet: Sheet, { name, y, on, off }: SideBar, frame: Frame): void {
  sheet.letter(lettering.start(0, y + 4, laneName(name, frame), LETTERING.lane))
  sheet.draw(line(on, y, off, y, { stroke: 'edge', width: 4 }))
  sheet.draw(line(off, y - 5, off, y + 5, { stroke: 'ink-2', width: 1.25 }))
  letterBeside(sheet, off, y, 'off', frame)
}
function letterBeside(sheet: Sheet, x: number, y: number, words: string, frame: Frame): void {
  const fits = [6, 18].filter((dx) => x + dx + textWidth(words, LETTERING.small) <= frame.right)
  sheet.letterWhereFree(...fits.map((dx) => [lettering.start(x + dx, y + 4, words, LETTERING.small)]))
}
