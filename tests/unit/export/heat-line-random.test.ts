import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Drawing, LineMark, Mark, TextMark } from '../../../lib/export/drawing'
import { drawHeat } from '../../../lib/export/heat-line-draw'
import { overlap, textBox } from '../../../lib/export/text-width'
import { randomHeat } from './random-heat'

const isText = (mark: Mark): mark is TextMark => mark.kind === 'text'
/** Poles of moments and the line of now. */
const isPole = (mark: Mark): mark is LineMark =>
  mark.kind === 'line' && mark.x1 === mark.x2 && (mark.stroke === 'ember' || mark.stroke === 'ink-3') && !mark.dash

function faults(drawing: Drawing): string[] {
  const all = drawing.marks.filter(isText).map((mark) => ({ mark, box: textBox(mark) }))
  const over = all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b) => (overlap(a.box, b.box) ? [`"${a.mark.text}" over "${b.mark.text}"`] : [])),
  )
  const outside = all.filter(
    ({ box }) =>
      box.left < -0.5 || box.right > drawing.width + 0.5 || box.top < -0.5 || box.bottom > drawing.height + 0.5,
  )
  // What has no halo stands on a ground of its own, which covers what runs beneath it.
  const crossed = drawing.marks.filter(isPole).flatMap((pole) =>
    all
      .filter(({ mark }) => mark.halo)
      .filter(
        ({ box }) => box.left < pole.x1 && pole.x1 < box.right && box.top < pole.y2 - 1 && pole.y1 + 1 < box.bottom,
      )
      .map(({ mark }) => `"${mark.text}" crossed at ${pole.x1}`),
  )
  return [...over, ...outside.map(({ mark }) => `"${mark.text}" outside`), ...crossed]
}

test('on three hundred random days, at any width, near or far: no label over another, crossed by a pole or now, or outside', () => {
  const wrong = fc.sample(randomHeat, { numRuns: 300, seed: 20270515 }).flatMap(({ facts, view }, day) => {
    const drawing = drawHeat(view, facts)
    const whole = !/null|NaN|Infinity/.test(JSON.stringify(drawing.marks))
    return [...faults(drawing), ...(whole ? [] : ['a number is missing'])].map(
      (words) => `day ${day}, ${view.width} px: ${words}`,
    )
  })
  expect(wrong).toEqual([])
})
