import { Page, StyleSheet, Text, View } from '@react-pdf/renderer'
import type { CallSheetModel } from '../export/call-sheet'
import type { Slip, SlipRow } from '../export/slips'
import { CONDENSED, FIGURES, SANS, SERIF } from './fonts'
import { type Paper, SIZES } from './sheet'

/** Three slips to a landscape sheet, cut apart along the dashes: 99 mm each on A4. */
const PER_PAGE = 3
/** Points: the height a slip has for its rows, and what a row takes. */
const ROOM = { A4: 500, Letter: 517 }
const ROW = { plain: 16.7, detailLine: 12.2, detailChars: 44 }

const s = StyleSheet.create({
  page: { flexDirection: 'row', fontFamily: SANS, fontSize: 10, lineHeight: 1.25, fontFeatureSettings: FIGURES },
  slip: { width: '33.333%', paddingVertical: 20, paddingHorizontal: 20 },
  cut: { borderRight: '0.6 dashed #777777' },
  small: { fontSize: 9.4, color: '#333333' },
  person: { fontFamily: SERIF, fontWeight: 600, fontSize: 19, lineHeight: 1.15 },
  head: { borderBottom: '3 solid #000000', paddingBottom: 4 },
  row: { flexDirection: 'row', gap: 8, borderBottom: '0.6 solid #BDBDBD', paddingVertical: 1.8, paddingLeft: 7 },
  time: { fontFamily: CONDENSED, fontWeight: 800, fontSize: 13, lineHeight: 1.15, width: 36 },
})

type Part = Slip & { readonly part: number }

/** The slips, three to a page. */
export function slipPagesOf(model: CallSheetModel, paper: Paper): Part[][] {
  const parts = model.slips.flatMap((slip) => inParts(slip, ROOM[paper]))
  return Array.from({ length: Math.ceil(parts.length / PER_PAGE) }, (_, i) =>
    parts.slice(i * PER_PAGE, (i + 1) * PER_PAGE),
  )
}

export function SlipPages({ model, paper }: { model: CallSheetModel; paper: Paper }) {
  return slipPagesOf(model, paper).map((page) => (
    <Page key={page.map(keyOf).join(' ')} size={[SIZES[paper].height, SIZES[paper].width]} style={s.page}>
      {page.map((part, i) => (
        <SlipPart key={keyOf(part)} model={model} part={part} cut={i < PER_PAGE - 1} />
      ))}
    </Page>
  ))
}
const keyOf = (part: Part) => `${part.person}-${part.part}`

const heightOf = (row: SlipRow) => ROW.plain + ROW.detailLine * Math.ceil(row.detail.length / ROW.detailChars)
/** A slip longer than the sheet goes on beside itself. */
function inParts(slip: Slip, room: number): Part[] {
  const parts: SlipRow[][] = [[]]
  let used = 0
  for (const row of slip.rows) {
    const height = heightOf(row)
    if (used + height > room) {
      parts.push([])
      used = 0
    }
    used += height
    parts.at(-1)?.push(row)
  }
  return parts.map((rows, part) => ({ ...slip, rows, part }))
}

function SlipPart({ model, part, cut }: { model: CallSheetModel; part: Part; cut: boolean }) {
  return (
    <View style={[s.slip, cut ? s.cut : {}]}>
      <View style={s.head}>
        <Text style={s.small}>
          {model.day} · {model.revision.split(',')[0]?.toLowerCase()}
        </Text>
        <Text style={s.person}>
          {part.person}
          {part.part > 0 ? ', continued' : ''}
        </Text>
        <Text style={s.small}>{part.does || model.title}</Text>
      </View>
      {part.rows.map((row) => (
        <Row key={`${row.time} ${row.title}`} row={row} />
      ))}
    </View>
  )
}

function Row({ row }: { row: SlipRow }) {
  return (
    <View wrap={false} style={[s.row, row.once ? { borderLeft: '2.5 solid #9A2F08', paddingLeft: 4.5 } : {}]}>
      <Text style={s.time}>{row.time}</Text>
      <View style={{ flex: 1 }}>
        <Text style={row.once ? { fontWeight: 700 } : {}}>{row.title}</Text>
        {row.detail ? <Text style={s.small}>{row.detail}</Text> : null}
      </View>
    </View>
  )
}
