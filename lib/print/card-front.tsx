import { View } from '@react-pdf/renderer'
import type { CardModel } from '../export/card'
import { Code, codeHeight } from './card-code'
import { CELL, FIGURE, INTRO, NOTE, SECOND, STEP, TITLE, tall } from './card-lettering'
import {
  Cautions,
  cautionsHeight,
  columnsOf,
  FACE_WIDTH,
  GAP,
  Head,
  Heading,
  headingHeight,
  Needs,
  notesHeight,
  type Side,
  STEP_NUMBER,
  Step,
  sum,
  TimeLine,
} from './card-parts'
import { CardTable, type Column, type Row, tableHeight } from './card-table'

const DONENESS: readonly Column[] = [
  { head: 'when sliced', share: 0.21 },
  { head: 'middle', share: 0.24, figures: true },
  { head: 'off the heat at about', share: 0.29, figures: true },
  { head: 'the authority says', share: 0.26 },
]
const donenessRows = ({ doneness }: CardModel): Row[] =>
  doneness.map((row) => ({ id: row.word, cells: [row.word, row.middle, row.offHeat, row.authority], here: row.here }))

const codeOf = ({ model, code }: Pick<Side, 'model' | 'code'>, width: number) =>
  code === null || model.published.at === null
    ? null
    : { code, at: model.published.at, words: 'This card on your phone, with times for your own roast.', width }

/** The recipe: what is needed, what is done, how it is known to be done, what to beware of. */
export function Front(side: Side) {
  const { model, width, scale } = side
  const { left, right } = columnsOf(width)
  const code = codeOf(side, left)
  return (
    <View>
      <Head model={model} scale={scale} />
      <TimeLine model={model} scale={scale} width={width} />
      <View style={{ flexDirection: 'row', paddingTop: 12 * scale }}>
        <View style={{ width: left }}>
          <Needs model={model} scale={scale} />
          {code && <Code {...code} />}
        </View>
        <View style={{ width: right, marginLeft: GAP }}>
          {model.steps.map((line) => (
            <Step key={line.no} line={line} scale={scale} />
          ))}
          <View wrap={false}>
            <Heading scale={scale}>How done</Heading>
            <CardTable columns={DONENESS} rows={donenessRows(model)} width={right} scale={scale} />
          </View>
          <View style={{ marginTop: 3 * scale }}>
            <Cautions sentences={model.cautions} scale={scale} />
          </View>
        </View>
      </View>
    </View>
  )
}

function needsHeight({ model, scale }: Side, room: number): number {
  const rows = model.ingredients.map(({ what, much, other }) => {
    const figures = tall(much, room * 0.55, FIGURE, scale) + tall(other, room * 0.55, SECOND, scale)
    return Math.max(tall(what, room * 0.62 - 8, CELL, scale), figures) + 6 * scale + 0.75
  })
  return headingHeight(scale) - 10 * scale + sum(rows) + notesHeight(model.notes, room, scale)
}
function headHeight({ model, width, scale }: Side): number {
  const words = width - 24 - FACE_WIDTH * scale
  const author = model.published.author === undefined ? 0 : NOTE.size * NOTE.lineHeight * scale + 8 * scale
  const title = tall(model.title, words, TITLE, scale) + author + tall(model.intro, words, INTRO, scale) + 12 * scale
  const face = (FACE_WIDTH * scale * (model.face.height + 16)) / (model.face.width + 16)
  return Math.max(title, face) + 14 * scale + 1.7
}
/** What the front takes, points: where to begin trying; the printer has the last word. */
export function frontHeight(side: Side): number {
  const { model, width, scale } = side
  const { left, right } = columnsOf(width)
  const code = codeOf(side, left)
  const steps = model.steps.map((s) => {
    const words = s.runs.map((r) => r.text).join('')
    return tall(words, right - STEP_NUMBER * scale, STEP, scale) + 7 * scale
  })
  const doing =
    sum(steps) +
    headingHeight(scale) +
    tableHeight(DONENESS, donenessRows(model), right, scale) +
    cautionsHeight(model.cautions, right, scale)
  const line = (FIGURE.size + SECOND.size) * 1.2 * scale + 9 + 18 * scale + 0.9
  return headHeight(side) + line + 15 * scale + Math.max(needsHeight(side, left) + (code ? codeHeight(code) : 0), doing)
}
