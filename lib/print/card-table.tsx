import { View } from '@react-pdf/renderer'
import { CELL, FIGURE, type Lettering, type Scale, set, tall, under } from './card-lettering'
import { PRINT } from './sheet'
import { Words } from './words'

export interface Column {
  readonly head: string
  /** Of the width, from 0 to 1. */
  readonly share: number
  readonly figures?: boolean
}
export interface Row {
  readonly id: string
  readonly cells: readonly string[]
  /** The one that was filmed. */
  readonly here?: boolean
}
const GUTTER = 8
const PADDING = 2.6

const letteringOf = (column: Column, here = false): Lettering =>
  column.figures ? { ...FIGURE, weight: here ? 700 : 500 } : { ...CELL, weight: here ? 700 : 400 }

/** A table whose rows keep together; the row of this cook stands out. */
export function CardTable({
  columns,
  rows,
  width,
  scale,
}: { columns: readonly Column[]; rows: readonly Row[]; width: number } & Scale) {
  const cell = (words: string, column: Column, lettering: Lettering, color: string) => (
    <Words
      key={`${column.head} ${column.share}`}
      style={{ ...set(lettering, scale), color, width: column.share * width, paddingRight: GUTTER }}
    >
      {words}
    </Words>
  )
  return (
    <View>
      <View wrap={false} style={{ flexDirection: 'row', paddingVertical: PADDING * scale, ...under(0.9) }}>
        {columns.map((column) => cell(column.head, column, CELL, PRINT.second))}
      </View>
      {rows.map((row) => (
        <View
          key={row.id}
          wrap={false}
          style={{ flexDirection: 'row', paddingVertical: PADDING * scale, ...under(0.75, PRINT.rule) }}
        >
          {columns.map((column, i) => cell(row.cells[i] ?? '', column, letteringOf(column, row.here), PRINT.ink))}
        </View>
      ))}
    </View>
  )
}

/** What the table takes, points. */
export function tableHeight(columns: readonly Column[], rows: readonly Row[], width: number, scale: number): number {
  const rowTall = (cells: readonly string[], here?: boolean) =>
    Math.max(
      ...columns.map((column, i) =>
        tall(cells[i] ?? '', column.share * width - GUTTER, letteringOf(column, here), scale),
      ),
    ) +
    2 * PADDING * scale +
    0.9
  return [columns.map(({ head }) => head), ...rows.map(({ cells }) => cells)]
    .map((cells, i) => rowTall(cells, rows[i - 1]?.here))
    .reduce((a, b) => a + b, 0)
}
