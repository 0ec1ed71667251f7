import { Circle, Line, Rect, Svg, View } from '@react-pdf/renderer'
import type { CardLine, CardModel } from '../export/card'
import type { QrDrawing } from '../export/qr'
import {
  CAUTION,
  CELL,
  FIGURE,
  FOOT,
  HEADING,
  INTRO,
  NOTE,
  NUMBER,
  type Scale,
  SECOND,
  STEP,
  set,
  TITLE,
  tall,
  under,
} from './card-lettering'
import { DrawingOnPaper } from './drawing'
import { MARGIN, PRINT } from './sheet'
import { Words } from './words'

/** What the file says of itself. */
export const aboutCard = ({ title, published }: CardModel, date: Date) => ({
  title,
  author: published.author,
  language: 'en',
  creator: 'Emberslate',
  producer: 'Emberslate',
  creationDate: date,
  modificationDate: date,
})

/** Left column's share of the side, and the gap between the columns. */
const LEFT = 0.325
export const GAP = 24
export interface Side extends Scale {
  readonly model: CardModel
  readonly width: number
  /** To where the card is published; drawn once, for it takes its time. */
  readonly code: QrDrawing | null
}
export const columnsOf = (width: number) => ({ left: width * LEFT, right: width * (1 - LEFT) - GAP })

export const sum = (all: readonly number[]) => all.reduce((a, b) => a + b, 0)
export const headingHeight = (scale: number) => (HEADING.size * HEADING.lineHeight + 13) * scale
export const cautionsHeight = (sentences: readonly string[], room: number, scale: number) =>
  sum(sentences.map((s) => tall(s, room - CAUTION_MARK, CAUTION, scale) + 5 * scale))
export const notesHeight = (notes: readonly string[], room: number, scale: number) =>
  sum(notes.map((n) => tall(n, room, NOTE, scale) + 6 * scale))

export const FACE_WIDTH = 185
export function Head({ model, scale }: { model: CardModel } & Scale) {
  const { author } = model.published
  return (
    <View style={{ flexDirection: 'row', justifyContent: 'space-between', paddingBottom: 14 * scale, ...under(1.7) }}>
      <View style={{ flex: 1, paddingRight: 24, justifyContent: 'space-between' }}>
        <View>
          <Words style={set(TITLE, scale)}>{model.title}</Words>
          {author !== undefined && (
            <Words style={{ ...set(NOTE, scale), marginTop: 8 * scale }}>{`By ${author}`}</Words>
          )}
        </View>
        <Words style={{ ...set(INTRO, scale), marginTop: 12 * scale }}>{model.intro}</Words>
      </View>
      <DrawingOnPaper drawing={model.face} width={FACE_WIDTH * scale} air={8} />
    </View>
  )
}

const STROKE = { 'warm-up': 0.9, roast: 2.6, sear: 4.6, rest: 0.9 } as const
export function TimeLine({ model, scale, width }: { model: CardModel; width: number } & Scale) {
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
            <Words style={{ ...set(FIGURE, scale), marginBottom: 2 }}>{part.label}</Words>
            <Svg width={w} height={5} style={{ marginLeft: -4 }}>
              <Line x1={0} y1={2.5} x2={w} y2={2.5} stroke={PRINT.ink} strokeWidth={STROKE[part.id]} />
            </Svg>
            <Words style={{ ...set(SECOND, scale), marginTop: 2 }}>{part.words}</Words>
          </View>
        )
      })}
    </View>
  )
}

export const Heading = ({ children, scale, first = false }: { children: string; first?: boolean } & Scale) => (
  <Words
    minPresenceAhead={40}
    style={{ ...set(HEADING, scale), marginTop: first ? 0 : 10 * scale, marginBottom: 3 * scale }}
  >
    {children}
  </Words>
)

export const Note = ({ children, scale }: { children: string } & Scale) => (
  <Words style={{ ...set(NOTE, scale), marginTop: 6 * scale }}>{children}</Words>
)

export function Needs({ model, scale }: { model: CardModel } & Scale) {
  return (
    <View>
      <Heading scale={scale} first>
        You need
      </Heading>
      {model.ingredients.map((row, i) => (
        <View
          // biome-ignore lint/suspicious/noArrayIndexKey: the same thing may be wanted twice
          key={i}
          wrap={false}
          style={{
            flexDirection: 'row',
            justifyContent: 'space-between',
            paddingVertical: 3 * scale,
            ...under(0.75, PRINT.rule),
          }}
        >
          <Words style={{ ...set(CELL, scale), flex: 1, paddingRight: 8 }}>{row.what}</Words>
          <View style={{ alignItems: 'flex-end', maxWidth: '55%' }}>
            <Words style={{ ...set(FIGURE, scale), textAlign: 'right' }}>{row.much}</Words>
            {row.other !== '' && (
              <Words style={{ ...set(SECOND, scale), textAlign: 'right', color: PRINT.second }}>{row.other}</Words>
            )}
          </View>
        </View>
      ))}
      {model.notes.map((note) => (
        <Note key={note} scale={scale}>
          {note}
        </Note>
      ))}
    </View>
  )
}

export const STEP_NUMBER = 22
export function Step({ line, scale }: { line: CardLine } & Scale) {
  return (
    <View wrap={false} style={{ flexDirection: 'row', marginBottom: 7 * scale }}>
      <Words style={{ ...set(NUMBER, scale), width: STEP_NUMBER * scale }}>{line.no}</Words>
      <Words style={{ ...set(STEP, scale), flex: 1 }}>
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

const CAUTION_MARK = 18
export const Cautions = ({ sentences, scale }: { sentences: readonly string[] } & Scale) =>
  sentences.map((sentence) => (
    <View key={sentence} wrap={false} style={{ flexDirection: 'row', marginTop: 5 * scale }}>
      <CautionMark side={12 * scale} />
      <Words style={{ ...set(CAUTION, scale), flex: 1 }}>{sentence}</Words>
    </View>
  ))

export function Foot({ words, stamp }: { words: string; stamp: string }) {
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
      <Words style={{ ...set(FOOT), flex: 1, paddingRight: 20 }}>{words}</Words>
      <Words style={set(FOOT)}>{stamp}</Words>
    </View>
  )
}
