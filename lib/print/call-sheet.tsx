import { Document, Page, Text, View } from '@react-pdf/renderer'
import type { ReactNode } from 'react'
import type { CallRow, CallSheetModel, GapRow } from '../export/call-sheet'
import { Blank } from './blank'
import { GAPS_BESIDE, Gaps, gapPages, gapStyles } from './call-gaps'
import { LEAST, MARGIN, type Styles, stylesOf } from './call-sheet-styles'
import { SlipPages } from './call-slips'
import { DrawingOnPaper } from './drawing'
import { NO_DATE, type PrintedDocument, printDocument, sheetsIn } from './render'
import { type Paper, SIZES } from './sheet'
import { Words } from './words'

/** The call sheet on paper, one page where it fits, its head on every further one; then everybody's slip. */
export async function printCallSheet(model: CallSheetModel, paper: Paper = 'A4'): Promise<Uint8Array> {
  return printDocument(callSheet(model, paper, await densityFor(model, paper)))
}

/** Set a little denser before the sheet is let run over to a second page. */
const DENSITIES = [1, 0.9, 0.8]

/** The first page is set by itself, with room where its picture will be: the printer decides, at a tenth of the work. */
async function densityFor(model: CallSheetModel, paper: Paper): Promise<number> {
  for (const density of DENSITIES) {
    const trial = document(model, <CrewPage model={model} paper={paper} density={density} trial />)
    if (sheetsIn(await printDocument(trial)) === 1) return density
  }
  return 1
}

function callSheet(model: CallSheetModel, paper: Paper, density: number): PrintedDocument {
  const { width, height } = SIZES[paper]
  return document(
    model,
    <>
      <CrewPage model={model} paper={paper} density={density} />
      {gapPages(model.gaps, paper).map((rows) => (
        <Page key={rows[0]?.shot} size={[width, height]} style={gapStyles.page}>
          <Head s={gapStyles} model={model} />
          <Gaps rows={rows} />
          <Foot s={gapStyles} model={model} height={height} />
        </Page>
      ))}
      <SlipPages model={model} paper={paper} />
    </>,
  )
}

const document = (model: CallSheetModel, pages: ReactNode): PrintedDocument => (
  <Document
    title={`Call sheet: ${model.title}`}
    author="Emberslate"
    language="en"
    creationDate={NO_DATE}
    modificationDate={NO_DATE}
  >
    {pages}
  </Document>
)

interface CrewPageProps {
  readonly model: CallSheetModel
  readonly paper: Paper
  readonly density: number
  readonly trial?: boolean
}
function CrewPage({ model, paper, density, trial = false }: CrewPageProps) {
  const { width, height } = SIZES[paper]
  const s = stylesOf(density)
  const room = width - 2 * MARGIN.side
  // No narrower than keeps the picture's 12.5 px lettering at the least size.
  const picture = Math.max(room * density, (model.heatLine.width * LEAST) / 12.5)
  return (
    <Page size={[width, height]} style={s.page}>
      <Head s={s} model={model} />
      <Facts s={s} model={model} />
      {trial ? (
        <View style={{ width: picture, height: (model.heatLine.height * picture) / model.heatLine.width }} />
      ) : (
        <DrawingOnPaper drawing={model.heatLine} width={picture} />
      )}
      <Calls s={s} rows={model.calls} />
      <Below s={s} model={model} />
      <Reach s={s} model={model} />
      <Foot s={s} model={model} height={height} />
    </Page>
  )
}

type Part = { readonly s: Styles; readonly model: CallSheetModel }

function Head({ s, model }: Part) {
  return (
    <View fixed style={s.head}>
      <View style={{ flex: 1, paddingRight: 16 }}>
        <Words style={s.small}>Call sheet · {model.day}</Words>
        <Words style={[s.title, { fontSize: titleSize(model.title, s.title.fontSize as number) }]}>{model.title}</Words>
      </View>
      <View style={{ width: 112 }}>
        <Words style={[s.bold, { textAlign: 'right' }]}>{model.revision}</Words>
        <Words style={{ textAlign: 'right' }}>{model.forecast}</Words>
      </View>
    </View>
  )
}

/** A long title is set smaller: two lines of it at most. */
const LONG_TITLE = 44
const titleSize = (title: string, size: number) => (title.length > LONG_TITLE ? size * 0.72 : size)

function Facts({ s, model }: Part) {
  return (
    <View style={s.facts}>
      <View style={{ width: 84 }}>
        <Words style={s.small}>crew call</Words>
        <Words style={s.call}>{model.crewCall}</Words>
      </View>
      <Fact s={s} title="Place">
        {`${model.place}${model.producer.parking ? `. Parking: ${model.producer.parking}` : ''}`}
      </Fact>
      <Fact s={s} title="Light and weather">
        {model.light}
      </Fact>
      <View style={{ flex: 1.45 }}>
        <Words style={s.bold}>If something happens</Words>
        <Filled label="Emergency number" words={model.producer.emergency} />
        <Filled label="Nearest hospital" words={model.producer.hospital} />
        <Words>{model.fire}</Words>
      </View>
    </View>
  )
}

function Fact({ s, title, children }: { s: Styles; title: string; children: ReactNode }) {
  return (
    <View style={{ flex: 1 }}>
      <Words style={s.bold}>{title}</Words>
      <Words>{children}</Words>
    </View>
  )
}
/** What the producer wrote, or a line to write on. */
const Filled = ({ label, words }: { label: string; words: string | null }) =>
  words === null ? (
    <Blank label={label} />
  ) : (
    <Words>
      {label}: <Text style={{ fontWeight: 700 }}>{words}</Text>
    </Words>
  )

const COLUMNS = [
  { title: 'likely', width: 40 },
  { title: 'moment', width: 80 },
  { title: 'shot', width: 112 },
  { title: 'early to late', width: 66 },
  { title: 'stand by at', width: 54 },
  { title: 'or called at', width: 110 },
  { title: 'who', width: 67 },
] as const

function Calls({ s, rows }: { s: Styles; rows: readonly CallRow[] }) {
  if (rows.length === 0) return null
  return (
    <View>
      <View wrap={false} minPresenceAhead={40}>
        <Words style={s.h2}>Calls that happen once</Words>
        <View style={[s.row, { borderBottom: '0.9 solid #000000', paddingVertical: 1 }]}>
          {COLUMNS.map((column) => (
            <Words key={column.title} style={[s.th, { width: column.width, flexGrow: column.title === 'who' ? 1 : 0 }]}>
              {column.title}
            </Words>
          ))}
        </View>
      </View>
      {rows.map((row) => (
        <CallLine s={s} key={`${row.likely} ${row.shot}`} row={row} />
      ))}
    </View>
  )
}

function CallLine({ s, row }: { s: Styles; row: CallRow }) {
  const cells = [
    <Words key="likely" style={s.time}>
      {row.likely}
    </Words>,
    <Words key="moment" style={s.bold}>
      {row.moment}
    </Words>,
    <Words key="shot">{row.shot}</Words>,
    <Words key="window" style={s.figure}>
      {row.window}
    </Words>,
    <Words key="standby" style={row.standby === 'called live' ? s.figure : s.time}>
      {row.standby}
    </Words>,
    <Words key="trigger">{row.trigger}</Words>,
    <Words key="who">{row.who}</Words>,
  ]
  return (
    <View wrap={false} style={[s.row, { borderLeft: '2.5 solid #9A2F08', paddingLeft: 5 }]}>
      {cells.map((cell, i) => {
        const width = (COLUMNS[i]?.width ?? 60) - (i === 0 ? 7.5 : 0)
        return (
          <View key={cell.key} style={{ width, flexGrow: i === cells.length - 1 ? 1 : 0, paddingRight: 5 }}>
            {cell}
          </View>
        )
      })}
    </View>
  )
}

function Below({ s, model }: Part) {
  return (
    <View style={{ flexDirection: 'row', gap: 16, marginTop: 6 }}>
      <View style={{ flex: 1 }}>
        <OwnCalls s={s} model={model} />
      </View>
      <View style={{ flex: 1 }}>
        <Words style={s.h3}>In the gaps</Words>
        {model.gaps.length > GAPS_BESIDE ? (
          <Words>{model.gaps.length} shots that can be had again: see the next page.</Words>
        ) : (
          model.gaps.map((gap) => <GapBeside s={s} key={`${gap.time} ${gap.shot}`} gap={gap} />)
        )}
        {model.gaps.length === 0 && <Words>None.</Words>}
        {model.dropped.map((words) => (
          <Named key={words} s={s} name="Dropped">
            {words}
          </Named>
        ))}
      </View>
      <View style={{ flex: 1.5 }}>
        <Words style={s.h3}>Care</Words>
        {model.care.map((caution) => (
          <Words key={caution} style={{ marginBottom: 2 }}>
            {caution}
          </Words>
        ))}
      </View>
    </View>
  )
}

function GapBeside({ s, gap }: { s: Styles; gap: GapRow }) {
  return (
    <View wrap={false} style={{ flexDirection: 'row', gap: 5 }}>
      <Words style={[s.figure, { width: 26, fontWeight: 700 }]}>{gap.time}</Words>
      <Words style={{ flex: 1 }}>{gap.shot}</Words>
    </View>
  )
}

/** Whom to call, what to bring, what else there is to say. */
function Reach({ s, model }: Part) {
  const { contacts, notes } = model.producer
  return (
    <View style={{ flexDirection: 'row', gap: 16, marginTop: 6, paddingTop: 4, borderTop: '0.9 solid #000000' }}>
      <View style={{ flex: 1.1 }}>
        <Words style={s.h3}>Contacts</Words>
        {contacts.length === 0 && <Blank label="Producer" />}
        {contacts.map((words) => (
          <Words key={words}>{words}</Words>
        ))}
      </View>
      <View style={{ flex: 1.6 }}>
        <Words>
          <Text style={s.bold}>Kit </Text>
          {model.kit}
        </Words>
        <Filled label="Allergens on set" words={model.producer.allergens} />
      </View>
      <View style={{ flex: 1.1 }}>
        <Words style={s.h3}>Notes</Words>
        {notes === null ? [1, 2].map((line) => <Blank key={line} label="" />) : <Words>{notes}</Words>}
      </View>
    </View>
  )
}

function Named({ s, name, children }: { s: Styles; name: string; children: ReactNode }) {
  return (
    <Words style={{ marginTop: 3 }}>
      <Text style={s.bold}>{name}: </Text>
      {children}
    </Words>
  )
}

function OwnCalls({ s, model }: Part) {
  return (
    <>
      {model.own.length > 0 && (
        <View style={{ flexDirection: 'row', justifyContent: 'space-between' }}>
          <Words style={s.h3}>Your own call</Words>
          <Words style={s.th}>first setup</Words>
        </View>
      )}
      {model.own.map((own) => (
        <View key={own.name} style={[s.row, { gap: 6 }]}>
          <Words style={{ flex: 1 }}>
            {own.name}
            {own.does ? `, ${own.does}` : ''}
          </Words>
          <Words style={[s.time, { width: 34 }]}>{own.call}</Words>
          <Words style={[s.figure, { width: 28, textAlign: 'right' }]}>{own.first}</Words>
        </View>
      ))}
      <Words style={{ marginTop: 4 }}>
        {model.meals ? (
          <>
            <Text style={s.bold}>Meal </Text>
            {model.meals}.{' '}
          </>
        ) : null}
        <Text style={s.bold}>Wrap </Text>
        {model.wrap}.
      </Words>
      {model.watch.map((words) => (
        <Words key={words} style={{ marginTop: 2 }}>
          {words}.
        </Words>
      ))}
    </>
  )
}

/** Points above the paper's edge; from above, since the printer loses what stands from below on a sheet that runs over. */
const FOOT = 32
function Foot({ s, model, height }: Part & { height: number }) {
  return (
    <View fixed style={[s.foot, { top: height - FOOT }]}>
      <Words>{model.foot[0]}</Words>
      <Words
        render={({ subPageNumber, subPageTotalPages }) =>
          subPageTotalPages > 1 ? `page ${subPageNumber} of ${subPageTotalPages}` : ''
        }
      />
      <Words>{model.foot[1]}</Words>
    </View>
  )
}
