import { Document, Page, Text, View } from '@react-pdf/renderer'
import type { ReactNode } from 'react'
import type { CallRow, CallSheetModel } from '../export/call-sheet'
import { LEAST, MARGIN, type Styles, stylesOf } from './call-sheet-styles'
import { SlipPages, slipPagesOf } from './call-slips'
import { DrawingOnPaper } from './drawing'
import { NO_DATE, type PrintedDocument, printDocument, sheetsIn } from './render'
import { type Paper, SIZES } from './sheet'

/** The call sheet on paper, one page where it fits, its head on every further one; then everybody's slip. */
export async function printCallSheet(model: CallSheetModel, paper: Paper = 'A4'): Promise<Uint8Array> {
  const slips = slipPagesOf(model, paper).length
  for (const density of DENSITIES) {
    const bytes = await printDocument(callSheet(model, paper, density))
    if (sheetsIn(bytes) === 1 + slips) return bytes
  }
  return printDocument(callSheet(model, paper, 1))
}

/** Set a little denser before the sheet is let run over to a second page. */
const DENSITIES = [1, 0.9, 0.8]

function callSheet(model: CallSheetModel, paper: Paper, density: number): PrintedDocument {
  const { width, height } = SIZES[paper]
  const s = stylesOf(density)
  const room = width - 2 * MARGIN.side
  // No narrower than keeps the picture's 12.5 px lettering at the least size.
  const picture = Math.max(room * density, (model.heatLine.width * LEAST) / 12.5)
  return (
    <Document
      title={`Call sheet: ${model.title}`}
      author="Emberslate"
      language="en"
      creationDate={NO_DATE}
      modificationDate={NO_DATE}
    >
      <Page size={[width, height]} style={s.page}>
        <Head s={s} model={model} />
        <Foot s={s} model={model} />
        <Facts s={s} model={model} />
        <DrawingOnPaper drawing={model.heatLine} width={picture} />
        <Calls s={s} rows={model.calls} />
        <Below s={s} model={model} />
      </Page>
      <SlipPages model={model} paper={paper} />
    </Document>
  )
}

type Part = { readonly s: Styles; readonly model: CallSheetModel }

function Head({ s, model }: Part) {
  return (
    <View fixed style={s.head}>
      <View style={{ flexShrink: 1, paddingRight: 16 }}>
        <Text style={s.small}>Call sheet · {model.day}</Text>
        <Text style={s.title}>{model.title}</Text>
      </View>
      <View style={{ flexShrink: 0 }}>
        <Text style={[s.bold, { textAlign: 'right' }]}>{model.revision}</Text>
        <Text style={{ textAlign: 'right' }}>{model.forecast}</Text>
      </View>
    </View>
  )
}

function Facts({ s, model }: Part) {
  return (
    <View style={s.facts}>
      <View style={{ width: 84 }}>
        <Text style={s.small}>crew call</Text>
        <Text style={s.call}>{model.crewCall}</Text>
      </View>
      <Fact s={s} title="Place">
        {model.place}
      </Fact>
      <Fact s={s} title="Light and weather">
        {model.light}
      </Fact>
      <View style={{ flex: 1.45 }}>
        <Text style={s.bold}>If something happens</Text>
        <Blank label="Emergency number" />
        <Blank label="Nearest hospital" />
        <Text>{model.emergency}</Text>
      </View>
    </View>
  )
}

function Fact({ s, title, children }: { s: Styles; title: string; children: ReactNode }) {
  return (
    <View style={{ flex: 1 }}>
      <Text style={s.bold}>{title}</Text>
      <Text>{children}</Text>
    </View>
  )
}
/** For the producer to fill in by hand. */
function Blank({ label }: { label: string }) {
  return (
    <View style={{ flexDirection: 'row', alignItems: 'flex-end', gap: 4 }}>
      <Text>{label}</Text>
      <View style={{ flex: 1, borderBottom: '0.8 solid #000000', marginBottom: 2 }} />
    </View>
  )
}

const COLUMNS = [
  { title: 'likely', width: 40 },
  { title: 'moment', width: 80 },
  { title: 'shot', width: 112 },
  { title: 'early to late', width: 66 },
  { title: 'stand by at', width: 54 },
  { title: 'or when the probe reads', width: 110 },
  { title: 'who', width: 67 },
] as const

function Calls({ s, rows }: { s: Styles; rows: readonly CallRow[] }) {
  if (rows.length === 0) return null
  return (
    <View>
      <View wrap={false} minPresenceAhead={40}>
        <Text style={s.h2}>Calls that happen once</Text>
        <View style={[s.row, { borderBottom: '0.9 solid #000000', paddingVertical: 1 }]}>
          {COLUMNS.map((column) => (
            <Text key={column.title} style={[s.th, { width: column.width, flexGrow: column.title === 'who' ? 1 : 0 }]}>
              {column.title}
            </Text>
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
    <Text key="likely" style={s.time}>
      {row.likely}
    </Text>,
    <Text key="moment" style={s.bold}>
      {row.moment}
    </Text>,
    <Text key="shot">{row.shot}</Text>,
    <Text key="window" style={s.figure}>
      {row.window}
    </Text>,
    <Text key="standby" style={row.standby === 'called live' ? s.figure : s.time}>
      {row.standby}
    </Text>,
    <Text key="trigger">{row.trigger}</Text>,
    <Text key="who">{row.who}</Text>,
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
        <Named s={s} name="Kit">
          {model.kit}
        </Named>
      </View>
      <View style={{ flex: 1 }}>
        <Text style={s.h3}>Free shots, in the gaps</Text>
        <Text>{model.free.join(' · ') || 'None.'}</Text>
        {model.dropped.map((words) => (
          <Named key={words} s={s} name="Dropped">
            {words}
          </Named>
        ))}
      </View>
      <View style={{ flex: 1.45 }}>
        <Text style={s.h3}>Care</Text>
        {model.care.map((caution) => (
          <Text key={caution} style={{ marginBottom: 2 }}>
            {caution}
          </Text>
        ))}
      </View>
    </View>
  )
}
function Named({ s, name, children }: { s: Styles; name: string; children: ReactNode }) {
  return (
    <Text style={{ marginTop: 3 }}>
      <Text style={s.bold}>{name}: </Text>
      {children}
    </Text>
  )
}

function OwnCalls({ s, model }: Part) {
  return (
    <>
      {model.own.length > 0 && (
        <View style={{ flexDirection: 'row', justifyContent: 'space-between' }}>
          <Text style={s.h3}>Your own call</Text>
          <Text style={s.th}>first setup</Text>
        </View>
      )}
      {model.own.map((own) => (
        <View key={own.name} style={s.row}>
          <Text style={{ flex: 1 }}>
            {own.name}
            {own.does ? `, ${own.does}` : ''}
          </Text>
          <Text style={[s.time, { width: 34 }]}>{own.call}</Text>
          <Text style={[s.figure, { width: 28, textAlign: 'right' }]}>{own.first}</Text>
        </View>
      ))}
      <Text style={{ marginTop: 4 }}>
        {model.meals ? (
          <>
            <Text style={s.bold}>Meal </Text>
            {model.meals}.{' '}
          </>
        ) : null}
        <Text style={s.bold}>Wrap </Text>
        about {model.wrap}.
      </Text>
      {model.watch.map((words) => (
        <Text key={words} style={{ marginTop: 2 }}>
          {words}.
        </Text>
      ))}
    </>
  )
}

function Foot({ s, model }: Part) {
  return (
    <View fixed style={s.foot}>
      <Text>{model.foot[0]}</Text>
      <Text
        render={({ subPageNumber, subPageTotalPages }) =>
          subPageTotalPages > 1 ? `page ${subPageNumber} of ${subPageTotalPages}` : ''
        }
      />
      <Text>{model.foot[1]}</Text>
    </View>
  )
}
