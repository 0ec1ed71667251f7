import { View } from '@react-pdf/renderer'
import type { GapRow } from '../export/call-sheet'
import { LEAST, MARGIN, stylesOf } from './call-sheet-styles'
import { lineCount } from './line-count'
import { type Paper, SIZES } from './sheet'
import { Words } from './words'

/** As many stand beside the other columns of the first page; a longer day has its gaps on pages of their own. */
export const GAPS_BESIDE = 11

const COLUMNS = [
  { title: 'rolls', width: 44 },
  { title: 'shot', width: 250 },
  { title: 'who', width: 100 },
  { title: 'place', width: 135 },
] as const

/** Set a little denser than the first page, always the same, so that the rows of a page can be counted. */
const DENSITY = 0.9
/** Points: a line of a row and what stands around it; margins, head and titles of a page. */
const LINE = 11.2
const AROUND = 3.6
const FRAME = MARGIN.top + MARGIN.bottom + 96

function heightOf(row: GapRow): number {
  const lines = [row.shot, row.who, row.place].map((words, i) =>
    lineCount(words, (COLUMNS[i + 1]?.width ?? 100) - 8, { face: 'sans', weight: 400, size: LEAST }),
  )
  return AROUND + LINE * Math.max(1, ...lines)
}

/** The rows of each page; none where they stand on the first. */
export function gapPages(gaps: readonly GapRow[], paper: Paper): GapRow[][] {
  if (gaps.length <= GAPS_BESIDE) return []
  const room = SIZES[paper].height - FRAME
  const pages: GapRow[][] = [[]]
  let used = 0
  for (const row of gaps) {
    const takes = heightOf(row)
    if (used + takes > room) {
      pages.push([])
      used = 0
    }
    used += takes
    pages.at(-1)?.push(row)
  }
  return pages
}

const s = stylesOf(DENSITY)
export const gapStyles = s

export function Gaps({ rows }: { rows: readonly GapRow[] }) {
  return (
    <View>
      <Words style={s.h2}>In the gaps</Words>
      <View style={[s.row, { borderBottom: '0.9 solid #000000', paddingVertical: 1 }]}>
        {COLUMNS.map(({ title, width }) => (
          <Words key={title} style={[s.th, { width, flexGrow: title === 'place' ? 1 : 0 }]}>
            {title}
          </Words>
        ))}
      </View>
      {rows.map((row) => (
        <View key={`${row.time} ${row.shot}`} wrap={false} style={s.row}>
          <Words style={[s.time, { width: COLUMNS[0].width }]}>{row.time}</Words>
          {[row.shot, row.who, row.place].map((words, i) => (
            <View
              // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its column
              key={i}
              style={{ width: COLUMNS[i + 1]?.width, flexGrow: i === 2 ? 1 : 0, paddingRight: 8 }}
            >
              <Words>{words}</Words>
            </View>
          ))}
        </View>
      ))}
    </View>
  )
}
