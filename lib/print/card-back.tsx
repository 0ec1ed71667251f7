import { View } from '@react-pdf/renderer'
import type { CardModel } from '../export/card'
import {
  Cautions,
  cautionsHeight,
  columnsOf,
  GAP,
  Heading,
  headingHeight,
  Note,
  notesHeight,
  type Side,
} from './card-parts'
import { CardTable, type Column, type Row, tableHeight } from './card-table'

const KNOW: readonly Column[] = [
  { head: 'stage', share: 0.16 },
  { head: 'by its temperature', share: 0.52 },
  { head: 'roughly', share: 0.32 },
]
const knowRows = ({ howToKnow }: CardModel): Row[] =>
  howToKnow.map(({ id, stage, know, roughly }) => ({ id, cells: [stage, know, roughly] }))

const sizeColumns = ({ columns }: NonNullable<CardModel['sizes']>): Column[] => [
  { head: 'thickest part', share: 0.19, figures: true },
  { head: 'weight', share: 0.23, figures: true },
  ...columns.map(({ words }) => ({ head: words, share: 0.58 / columns.length, figures: true })),
]
const sizeRows = ({ rows }: NonNullable<CardModel['sizes']>): Row[] =>
  rows.map(({ thick, weight, filmed, cells }) => ({
    id: thick,
    cells: [thick, weight, ...cells.map(({ words }) => words)],
    here: filmed,
  }))

const NUTRITION: readonly Column[] = [
  { head: '', share: 0.66 },
  { head: 'about', share: 0.34, figures: true },
]
const nutritionRows = ({ recipe }: CardModel): Row[] =>
  recipe.nutrition.rows.map(({ name, amount, unit }) => ({ id: name, cells: [name, `${amount} ${unit}`] }))

/** For the reader's own roast, and for afterwards: other sizes, what to go by stage by stage, keeping, nutrition. */
export function Back({ model, width, scale, first }: Omit<Side, 'code'> & { first: boolean }) {
  const { left, right } = columnsOf(width)
  const { sizes, recipe } = model
  return (
    <View>
      {sizes && (
        <View>
          <Heading scale={scale} first={first}>
            Yours is another size?
          </Heading>
          <Note scale={scale}>{`${sizes.caption}.`}</Note>
          <CardTable columns={sizeColumns(sizes)} rows={sizeRows(sizes)} width={width} scale={scale} />
          <Note scale={scale}>{sizes.note}</Note>
        </View>
      )}
      {model.howToKnow.length > 0 && (
        <View>
          <Heading scale={scale} first={first && !sizes}>
            How you know
          </Heading>
          <CardTable columns={KNOW} rows={knowRows(model)} width={width} scale={scale} />
        </View>
      )}
      <View style={{ flexDirection: 'row' }}>
        <View style={{ width: left }}>
          {recipe.nutrition.rows.length > 0 && (
            <View>
              <Heading scale={scale}>Per serving, an estimate</Heading>
              <CardTable columns={NUTRITION} rows={nutritionRows(model)} width={left} scale={scale} />
            </View>
          )}
          {recipe.nutrition.note.map((note) => (
            <Note key={note} scale={scale}>
              {note}
            </Note>
          ))}
        </View>
        <View style={{ width: right, marginLeft: GAP }}>
          <Heading scale={scale}>Afterwards</Heading>
          {recipe.storage.map((sentence) => (
            <Note key={sentence} scale={scale}>
              {sentence}
            </Note>
          ))}
          <Cautions sentences={model.housekeeping} scale={scale} />
        </View>
      </View>
    </View>
  )
}

/** What the back takes, points. */
export function backHeight({ model, width, scale }: Omit<Side, 'code'>): number {
  const { left, right } = columnsOf(width)
  const { sizes, recipe } = model
  const bySize = sizes
    ? headingHeight(scale) +
      notesHeight([sizes.caption, sizes.note], width, scale) +
      tableHeight(sizeColumns(sizes), sizeRows(sizes), width, scale)
    : 0
  const stages =
    model.howToKnow.length > 0 ? headingHeight(scale) + tableHeight(KNOW, knowRows(model), width, scale) : 0
  const nutrition =
    (recipe.nutrition.rows.length > 0
      ? headingHeight(scale) + tableHeight(NUTRITION, nutritionRows(model), left, scale)
      : 0) + notesHeight(recipe.nutrition.note, left, scale)
  const afterwards =
    headingHeight(scale) + notesHeight(recipe.storage, right, scale) + cautionsHeight(model.housekeeping, right, scale)
  return bySize + stages + Math.max(nutrition, afterwards)
}
