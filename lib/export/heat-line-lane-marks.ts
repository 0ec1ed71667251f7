import { formatClock, fromIso } from '../plan/clock'
import { line, rect } from './drawing'
import { EDGE, type Frame, HAIR } from './heat-line-frame'
import { BOX, type Box, CAMERA_LANE, type Lane } from './heat-line-lane-boxes'
import { bottomOf, type Lanes, type SideBar, type Twin } from './heat-line-lanes'
import { LETTERING, lettering, type Sheet } from './heat-line-sheet'
import { fitWords, textWidth } from './text-width'

export function drawLaneGround(sheet: Sheet, { top, crewBottom, tentative }: Lanes): void {
  if (!tentative) return
  const { x1, x2 } = tentative
  sheet.draw(rect(x1, top - 14, x2 - x1, crewBottom - top + 14, { fill: 'leaf' }))
  sheet.draw(line(x1, top - 14, x2, top - 14, { stroke: 'cool', width: 1.25, dash: [2, 3] }))
}

export function drawLanes(sheet: Sheet, all: Lanes, frame: Frame, zone: string): void {
  for (const lane of all.lanes) drawRow(sheet, lane, frame)
  for (const meal of all.meals) drawMeal(sheet, meal, zone)
  for (const lane of all.lanes)
    for (const [i, box] of lane.boxes.entries()) drawBox(sheet, box, lane, lane.boxes.slice(i + 1))
  for (const twin of all.twins) drawTwin(sheet, twin)
  for (const side of all.sides) drawSide(sheet, side, frame)
  sheet.letter(lettering.start(0, all.lidY - 1, 'lid open', LETTERING.lane))
  for (const lid of all.lids) sheet.draw(rect(lid.x1, all.lidY - 10, lid.x2 - lid.x1, 10, { fill: 'ink' }))
  sheet.draw(line(frame.left, all.lidY, frame.right, all.lidY, EDGE))
  if (all.tentative) {
    const words = lettering.start(all.tentative.x1 + 6, all.top - 2, 'tentative: called live', LETTERING.call)
    sheet.letterWhereFree([words])
  }
}

function drawRow(sheet: Sheet, lane: Lane, frame: Frame): void {
  const bottom = bottomOf(lane)
  const baseline = lane.boxes.length > 0 || lane.height === CAMERA_LANE ? lane.top + 19 : lane.top + 17
  const name = fitWords(lane.name, frame.left - 8, LETTERING.lane) ?? lane.name
  sheet.letter(lettering.start(0, baseline, name, LETTERING.lane))
  sheet.draw(line(frame.left, bottom, frame.right, bottom, HAIR))
  for (const bar of lane.bars) {
    const dash = bar.live ? { dash: [6, 4] } : {}
    sheet.draw(line(bar.x1, lane.top + 12, bar.x2, lane.top + 12, { stroke: 'cool', width: 3, ...dash }))
  }
}

/** Solid is fixed, outline is free, dashed is called live. */
function drawBox(sheet: Sheet, box: Box, lane: Lane, later: readonly Box[]): void {
  const solid = !box.live && box.name === null
  const how = {
    fill: solid ? ('cool' as const) : ('paper' as const),
    stroke: 'cool' as const,
    width: 1.25,
    ...(box.live ? { dash: [4, 2.5] } : {}),
  }
  const wide = box.x2 - box.x1
  sheet.draw(rect(box.x1, lane.top + 6, wide, BOX.height, how))
  const number = { ...LETTERING.number, role: solid ? ('paper' as const) : ('cool' as const) }
  sheet.letter(lettering.middle(box.x1 + wide / 2, lane.top + 19, box.number, number, false))
  if (box.name === null) return
  const next = later.find((other) => other.name !== null)
  const room = next ? Math.min(140, next.x1 - box.x1 - 6) : 140
  const name = fitWords(box.name, room, { ...LETTERING.small, size: 12 })
  const small = { ...LETTERING.small, size: 12 }
  if (name) sheet.letterWhereFree([lettering.start(box.x1, lane.top + 34, name, small)])
}

function drawMeal(sheet: Sheet, box: Lanes['meals'][number], zone: string): void {
  const { x1, x2, top, bottom, meal } = box
  sheet.draw(rect(x1, top, x2 - x1, bottom - top, { fill: 'paper', stroke: 'edge', width: 1 }))
  const time = formatClock(fromIso(meal.start), zone)
  const word = ['meal', 'm.'].find((w) => textWidth(w, LETTERING.name) <= x2 - x1 - 4)
  if (!word) return
  const middle = (x1 + x2) / 2
  const at = (y: number) => lettering.middle(middle, y, word, LETTERING.name)
  const centre = (top + bottom) / 2
  const withTime = textWidth(time, LETTERING.small) <= x2 - x1 - 4
  if (bottom - top < 34 || !withTime) sheet.letterWhereFree([at(centre + 4)])
  else sheet.letterWhereFree([at(centre - 2), lettering.middle(middle, centre + 13, time, LETTERING.small)])
}

/** A second roast is one line: thick on the heat, thin at rest, a stop where it is sliced. */
function drawTwin(sheet: Sheet, twin: Twin): void {
  sheet.letter(lettering.start(0, twin.y + 4, fitWords(twin.name, 96, LETTERING.lane) ?? twin.name, LETTERING.lane))
  sheet.draw(line(twin.on, twin.y, twin.off, twin.y, { stroke: 'edge', width: 4 }))
  sheet.draw(line(twin.off, twin.y, twin.end, twin.y, { stroke: 'ink-2', width: 1.25 }))
  sheet.draw(line(twin.end, twin.y - 5, twin.end, twin.y + 5, { stroke: 'ink-2', width: 1.25 }))
  sheet.letterWhereFree([lettering.start(twin.off + 6, twin.y + 4, 'rests', LETTERING.small)])
}

/** A side shares the fire: thick while it is in, a stop where it comes off. */
function drawSide(sheet: Sheet, { name, y, on, off }: SideBar, frame: Frame): void {
  const fits = fitWords(name, frame.left - 8, LETTERING.lane) ?? name
  sheet.letter(lettering.start(0, y + 4, fits, LETTERING.lane))
  sheet.draw(line(on, y, off, y, { stroke: 'edge', width: 4 }))
  sheet.draw(line(off, y - 5, off, y + 5, { stroke: 'ink-2', width: 1.25 }))
  sheet.letterWhereFree([lettering.start(off + 6, y + 4, 'off', LETTERING.small)])
}
