import { Page, StyleSheet, View } from '@react-pdf/renderer'
import type { CallSheetModel } from '../export/call-sheet'
import type { Face, Weight } from '../export/drawing'
import type { Slip, SlipRow } from '../export/slips'
import { Blank } from './blank'
import { CONDENSED, FIGURES, SANS, SERIF } from './fonts'
import { lineCount } from './line-count'
import { type Paper, SIZES } from './sheet'
import { Words } from './words'

/** Three slips to a landscape sheet, cut apart along the dashes: 99 mm each on A4. */
const PER_PAGE = 3
const EDGE = 20
const TIME = 36
/** Points: a line of the page's letters, and of small ones. */
const LINE = 12.5
const SMALL_LINE = 11.75
/** Above and below a row, and where rows stand closer. */
const PAD = 1.8
const TIGHT = 0.7

const s = StyleSheet.create({
  page: { fontFamily: SANS, fontSize: 10, lineHeight: 1.25, fontFeatureSettings: FIGURES },
  slip: { width: '33.333%', paddingVertical: EDGE, paddingHorizontal: EDGE },
  cut: { borderRight: '0.6 dashed #777777' },
  small: { fontSize: 9.4, color: '#333333' },
  person: { fontFamily: SERIF, fontWeight: 600, fontSize: 19, lineHeight: 1.15 },
  head: { borderBottom: '3 solid #000000', paddingBottom: 4 },
  row: { flexDirection: 'row', gap: 8, borderBottom: '0.6 solid #BDBDBD', paddingVertical: PAD, paddingLeft: 7 },
  time: { fontFamily: CONDENSED, fontWeight: 800, fontSize: 13, lineHeight: 1.15, width: TIME },
  foot: { marginTop: 'auto', borderTop: '0.9 solid #000000', paddingTop: 3, fontSize: 9.4 },
})

/** `tight`: its rows stand closer, where that keeps the slip in one piece. */
type Part = Slip & { readonly part: number; readonly tight: boolean }

/** The slips, three to a page. */
export function slipPagesOf(model: CallSheetModel, paper: Paper): Part[][] {
  const parts = model.slips.flatMap((slip) => inParts(slip, model, paper))
  return Array.from({ length: Math.ceil(parts.length / PER_PAGE) }, (_, i) =>
    parts.slice(i * PER_PAGE, (i + 1) * PER_PAGE),
  )
}

export function SlipPages({ model, paper }: { model: CallSheetModel; paper: Paper }) {
  return slipPagesOf(model, paper).map((page) => (
    <Page key={page.map(keyOf).join(' ')} size={[SIZES[paper].height, SIZES[paper].width]} style={s.page}>
      <View wrap={false} style={{ flexDirection: 'row', width: '100%', height: SIZES[paper].width - 1 }}>
        {page.map((part, i) => (
          <SlipPart key={keyOf(part)} model={model} part={part} cut={i < PER_PAGE - 1} />
        ))}
      </View>
    </Page>
  ))
}
const keyOf = (part: Part) => `${part.person}-${part.part}`

const linesOf = (words: string, room: number, face: Face, weight: Weight, size: number) =>
  lineCount(words, room, { face, weight, size })

/** Points of a row: its padding and rule, its title, its detail. */
function heightOf(row: SlipRow, room: number, pad: number): number {
  const title = linesOf(row.title, room, 'sans', row.once ? 700 : 400, 10)
  return 0.7 + 2 * pad + Math.max(15, LINE * title + SMALL_LINE * linesOf(row.detail, room, 'sans', 400, 9.4))
}
/** Points of head and foot, which every part repeats. */
function frameOf(slip: Slip, model: CallSheetModel, width: number): number {
  const head = 7 + 2 * SMALL_LINE + 22 * linesOf(slip.person, width, 'serif', 600, 19)
  const foot =
    8 +
    footLines(slip, model).reduce(
      (sum, { words }) => sum + SMALL_LINE * Math.max(1, linesOf(words, width, 'sans', 400, 9.4)),
      0,
    )
  return 2 * EDGE + head + foot
}

/** A slip longer than the sheet goes on beside itself. */
function inParts(slip: Slip, model: CallSheetModel, paper: Paper): Part[] {
  const { width: height, height: width } = SIZES[paper]
  const slipWidth = width / PER_PAGE - 2 * EDGE
  const room = height - frameOf(slip, model, slipWidth)
  const takesOf = (row: SlipRow, pad: number) => heightOf(row, slipWidth - TIME - 16, pad)
  const whole = (pad: number) => slip.rows.reduce((sum, row) => sum + takesOf(row, pad), 0) <= room
  if (!whole(PAD) && whole(TIGHT)) return [{ ...slip, part: 0, tight: true }]
  const parts: SlipRow[][] = [[]]
  let used = 0
  for (const row of slip.rows) {
    const takes = takesOf(row, PAD)
    if (used + takes > room) {
      parts.push([])
      used = 0
    }
    used += takes
    parts.at(-1)?.push(row)
  }
  return withoutOrphans(parts).map((rows, part) => ({ ...slip, rows, part, tight: false }))
}

/** The wrap alone on a slip gets lost: the last part has a few rows of the one before it. */
const LEAST_ROWS = 4
function withoutOrphans(parts: readonly SlipRow[][]): SlipRow[][] {
  const [last, before] = [parts.at(-1) ?? [], parts.at(-2)]
  if (!before || last.length >= LEAST_ROWS) return [...parts]
  const cut = Math.max(1, before.length - (LEAST_ROWS - last.length))
  return [...parts.slice(0, -2), before.slice(0, cut), [...before.slice(cut), ...last]]
}

interface FootLine {
  readonly words: string
  /** Nothing is known: a line to write on follows. */
  readonly blank: boolean
}
function footLines(slip: Slip, { producer }: CallSheetModel): FootLine[] {
  const said = (label: string, words: string | null) => ({
    words: words === null ? label : `${label}: ${words}`,
    blank: words === null,
  })
  return [
    ...(slip.light ? [{ words: slip.light, blank: false }] : []),
    said('Emergency', producer.emergency),
    said('Hospital', producer.hospital),
    { words: producer.contacts[0] ?? 'Producer', blank: producer.contacts.length === 0 },
  ]
}

function SlipPart({ model, part, cut }: { model: CallSheetModel; part: Part; cut: boolean }) {
  return (
    <View style={[s.slip, cut ? s.cut : {}]}>
      <View style={s.head}>
        <Words style={s.small}>
          {model.day} · {model.revision.split(',')[0]?.toLowerCase()}
          {part.part > 0 ? ' · continued' : ''}
        </Words>
        <Words style={s.person}>{part.person}</Words>
        <Words style={s.small}>{part.does || model.title}</Words>
      </View>
      {part.rows.map((row) => (
        <Row key={`${row.time} ${row.title}`} row={row} tight={part.tight} />
      ))}
      <View style={s.foot}>
        {footLines(part, model).map(({ words, blank }) =>
          blank ? <Blank key={words} label={words} /> : <Words key={words}>{words}</Words>,
        )}
      </View>
    </View>
  )
}

function Row({ row, tight }: { row: SlipRow; tight: boolean }) {
  const close = tight ? { paddingVertical: TIGHT } : {}
  const marked = row.once ? { borderLeft: '2.5 solid #9A2F08', paddingLeft: 4.5 } : {}
  return (
    <View wrap={false} style={[s.row, close, marked]}>
      <Words style={s.time}>{row.time}</Words>
      <View style={{ flex: 1 }}>
        <Words style={row.once ? { fontWeight: 700 } : {}}>{row.title}</Words>
        {row.detail ? <Words style={s.small}>{row.detail}</Words> : null}
      </View>
    </View>
  )
}
