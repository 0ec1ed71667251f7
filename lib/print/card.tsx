import { Circle, Document, Line, Page, Rect, Svg, View } from '@react-pdf/renderer'
import type { DonenessRow } from '../card/doneness-rows'
import type { CardLine, CardModel } from '../export/card'
import { FOOT, GAP, LEFT } from './card-height'
import { DrawingOnPaper } from './drawing'
import { CONDENSED, FIGURES, SANS, SERIF } from './fonts'
import { MARGIN, type Paper, PRINT, SIZES } from './sheet'
import { Words } from './words'

/** Type and space of the whole sheet times this; 1 is the look's own size. */
type Scale = { readonly scale: number }
const serif = (size: number, fontWeight = 400) => ({
  fontFamily: SERIF,
  fontSize: size,
  fontWeight,
  fontFeatureSettings: FIGURES,
})
const sans = (size: number, fontWeight = 400) => ({
  fontFamily: SANS,
  fontSize: size,
  fontWeight,
  fontFeatureSettings: FIGURES,
})
const figures = (size: number, fontWeight = 500) => ({
  fontFamily: CONDENSED,
  fontSize: size,
  fontWeight,
  fontFeatureSettings: FIGURES,
})
const under = (width: number, color: string = PRINT.ink) => ({ borderBottomWidth: width, borderBottomColor: color })

const FACE_WIDTH = 185
function Head({ model, scale }: { model: CardModel } & Scale) {
  return (
    <View style={{ flexDirection: 'row', justifyContent: 'space-between', paddingBottom: 14 * scale, ...under(1.7) }}>
      <View style={{ flex: 1, paddingRight: 24, justifyContent: 'space-between' }}>
        <Words style={{ ...serif(35 * scale, 600), lineHeight: 1.04 }}>{model.title}</Words>
        <Words style={{ ...sans(10.5 * scale), lineHeight: 1.35, marginTop: 12 * scale }}>{model.intro}</Words>
      </View>
      <DrawingOnPaper drawing={model.face} width={FACE_WIDTH * scale} air={8} />
    </View>
  )
}

const STROKE = { 'warm-up': 0.9, roast: 2.6, sear: 4.6, rest: 0.9 } as const
function TimeLine({ model, scale, width }: { model: CardModel; width: number } & Scale) {
  const total = model.timeLine.reduce((sum, part) => sum + part.likely, 0)
  // A short part still has to hold its word.
  const least = 46 / width
  const shares = model.timeLine.map((part) => Math.max(least, part.likely / total))
  const sum = shares.reduce((a, b) => a + b, 0)
  return (
    <View style={{ flexDirection: 'row', paddingVertical: 9 * scale, ...under(0.9) }}>
      {model.timeLine.map((part, i) => {
        const w = ((shares[i] ?? 0) / sum) * width
        return (
          <View key={part.id} style={{ width: w, paddingLeft: 4, borderLeftWidth: 0.9, borderLeftColor: PRINT.ink }}>
            <Words style={{ ...figures(9 * scale, 700), marginBottom: 2 }}>{part.label}</Words>
            <Svg width={w} height={5} style={{ marginLeft: -4 }}>
              <Line x1={0} y1={2.5} x2={w} y2={2.5} stroke={PRINT.ink} strokeWidth={STROKE[part.id]} />
            </Svg>
            <Words style={{ ...figures(9 * scale), marginTop: 2 }}>{part.words}</Words>
          </View>
        )
      })}
    </View>
  )
}

const Heading = ({ children, scale, first = false }: { children: string; first?: boolean } & Scale) => (
  <Words style={{ ...serif(14 * scale, 600), marginTop: first ? 0 : 10 * scale, marginBottom: 3 * scale }}>
    {children}
  </Words>
)

function Needs({ model, scale }: { model: CardModel } & Scale) {
  return (
    <View>
      <Heading scale={scale} first>
        You need
      </Heading>
      {model.ingredients.map((row) => (
        <View
          key={`${row.what} ${row.much}`}
          style={{
            flexDirection: 'row',
            justifyContent: 'space-between',
            paddingVertical: 3 * scale,
            ...under(0.75, PRINT.rule),
          }}
        >
          <Words style={{ ...sans(9.8 * scale), flex: 1, paddingRight: 8 }}>{row.what}</Words>
          <View style={{ alignItems: 'flex-end' }}>
            <Words style={figures(9.8 * scale, 700)}>{row.much}</Words>
            {row.other !== '' && <Words style={{ ...figures(9.4 * scale), color: PRINT.second }}>{row.other}</Words>}
          </View>
        </View>
      ))}
      {model.notes.map((note) => (
        <Words key={note} style={{ ...sans(9.8 * scale), lineHeight: 1.35, marginTop: 6 * scale }}>
          {note}
        </Words>
      ))}
      <View style={{ marginTop: 6 * scale }}>
        {model.housekeeping.map((sentence) => (
          <Caution key={sentence} sentence={sentence} scale={scale} />
        ))}
      </View>
    </View>
  )
}

function Step({ line, scale }: { line: CardLine } & Scale) {
  return (
    <View wrap={false} style={{ flexDirection: 'row', marginBottom: 7 * scale }}>
      <Words style={{ ...serif(14.5 * scale, 600), width: 22 * scale, lineHeight: 1.12 }}>{line.no}</Words>
      <Words style={{ ...serif(11.4 * scale), flex: 1, lineHeight: 1.38 }}>
        {line.runs.map((run, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: runs of one line never move
          <Words key={i} style={run.strong ? { fontWeight: 600 } : run.own ? { fontStyle: 'italic' } : {}}>
            {run.text}
          </Words>
        ))}
      </Words>
    </View>
  )
}

const COLUMNS = [22, 23, 29, 26].map((share, i) => ({ id: `c${i}`, width: `${share}%` }))
function Cells({ cells, scale, bold, head }: { cells: readonly string[]; bold?: boolean; head?: boolean } & Scale) {
  return (
    <View
      style={{ flexDirection: 'row', paddingVertical: 2.6 * scale, ...(head ? under(0.9) : under(0.75, PRINT.rule)) }}
    >
      {cells.map((cell, i) => {
        const number = !head && (i === 1 || i === 2)
        const face = number ? figures(9.4 * scale, 700) : sans(9.4 * scale, bold ? 700 : 400)
        return (
          <Words
            key={COLUMNS[i]?.id}
            style={{
              ...face,
              width: COLUMNS[i]?.width,
              color: head ? PRINT.second : PRINT.ink,
              ...(i === 3 ? { paddingLeft: 6 } : {}),
            }}
          >
            {cell}
          </Words>
        )
      })}
    </View>
  )
}
function Doneness({ rows, scale }: { rows: readonly DonenessRow[] } & Scale) {
  return (
    <View wrap={false}>
      <Heading scale={scale}>How you know</Heading>
      <Cells scale={scale} head cells={['when sliced', 'middle', 'off the heat at about', 'the authority says']} />
      {rows.map((row) => (
        <Cells
          key={row.word}
          scale={scale}
          bold={row.here}
          cells={[row.word, row.middle, row.offHeat, row.authority]}
        />
      ))}
    </View>
  )
}

/** The mark is drawn, not lettered: in a box of its own height the printer drops a letter that is a hair too tall. */
function CautionMark({ side }: { side: number }) {
  return (
    <Svg width={side} height={side} viewBox="0 0 12 12" style={{ marginRight: 6 }}>
      <Rect x={0.5} y={0.5} width={11} height={11} stroke={PRINT.ink} strokeWidth={0.9} fill="none" />
      <Line x1={6} y1={2.8} x2={6} y2={7} stroke={PRINT.ink} strokeWidth={1.3} />
      <Circle cx={6} cy={9.1} r={0.8} fill={PRINT.ink} />
    </Svg>
  )
}

function Caution({ sentence, scale }: { sentence: string } & Scale) {
  return (
    <View wrap={false} style={{ flexDirection: 'row', marginTop: 5 * scale }}>
      <CautionMark side={12 * scale} />
      <Words style={{ ...sans(9.4 * scale), flex: 1, lineHeight: 1.3 }}>{sentence}</Words>
    </View>
  )
}

function Foot({ model }: { model: CardModel }) {
  return (
    <View
      fixed
      style={{
        position: 'absolute',
        left: MARGIN,
        right: MARGIN,
        bottom: 26,
        flexDirection: 'row',
        borderTopWidth: 0.9,
        borderTopColor: PRINT.ink,
        paddingTop: 5,
      }}
    >
      <Words style={{ ...sans(8.4), flex: 1, paddingRight: 20, lineHeight: 1.25 }}>{model.foot}</Words>
      <Words style={sans(8.4)}>{model.stamp}</Words>
    </View>
  )
}

/** The whole card at one scale; where it runs over a sheet it makes a second page, and the printer takes a smaller scale. */
export function CardSheet({ model, paper, scale, date }: { model: CardModel; paper: Paper; date: Date } & Scale) {
  const width = SIZES[paper].width - 2 * MARGIN
  return (
    <Document
      title={model.title}
      language="en"
      creator="Emberslate"
      producer="Emberslate"
      creationDate={date}
      modificationDate={date}
    >
      <Page size={paper === 'A4' ? 'A4' : 'LETTER'} style={{ padding: MARGIN, paddingBottom: FOOT, color: PRINT.ink }}>
        <Head model={model} scale={scale} />
        <TimeLine model={model} scale={scale} width={width} />
        <View style={{ flexDirection: 'row', paddingTop: 12 * scale }}>
          <View style={{ width: width * LEFT }}>
            <Needs model={model} scale={scale} />
          </View>
          <View style={{ width: width * (1 - LEFT) - GAP, marginLeft: GAP }}>
            {model.steps.map((line) => (
              <Step key={line.no} line={line} scale={scale} />
            ))}
            <Doneness rows={model.doneness} scale={scale} />
            <View style={{ marginTop: 3 * scale }}>
              {model.cautions.map((sentence) => (
                <Caution key={sentence} sentence={sentence} scale={scale} />
              ))}
            </View>
          </View>
        </View>
        <Foot model={model} />
      </Page>
    </Document>
  )
}
