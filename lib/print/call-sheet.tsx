import { Document, Page, StyleSheet, Text, View } from '@react-pdf/renderer'
import type { ReactNode } from 'react'
import type { CallRow, CallSheetModel } from '../export/call-sheet'
import { SlipPages } from './call-slips'
import { DrawingOnPaper } from './drawing'
import { CONDENSED, FIGURES, SANS, SERIF } from './fonts'
import { NO_DATE, printDocument } from './render'
import { type Paper, SIZES } from './sheet'

/** Points. */
const MARGIN = { side: 33, top: 26, bottom: 40 }

const s = StyleSheet.create({
  page: {
    paddingTop: MARGIN.top,
    paddingBottom: MARGIN.bottom,
    paddingHorizontal: MARGIN.side,
    fontFamily: SANS,
    fontSize: 9.6,
    lineHeight: 1.32,
    color: '#000000',
    fontFeatureSettings: FIGURES,
  },
  head: {
    flexDirection: 'row',
    justifyContent: 'space-between',
    alignItems: 'flex-end',
    borderBottom: '3 solid #000000',
    paddingBottom: 3,
    marginBottom: 7,
  },
  title: { fontFamily: SERIF, fontWeight: 600, fontSize: 22, lineHeight: 1.15 },
  small: { fontSize: 9.4, color: '#333333' },
  bold: { fontWeight: 700 },
  facts: { flexDirection: 'row', gap: 14, borderBottom: '0.9 solid #000000', paddingBottom: 6, marginBottom: 6 },
  call: { fontFamily: CONDENSED, fontWeight: 800, fontSize: 32, lineHeight: 1 },
  h2: { fontFamily: SERIF, fontWeight: 600, fontSize: 13, lineHeight: 1.2, marginTop: 7, marginBottom: 2 },
  h3: { fontWeight: 700, fontSize: 10.5, marginBottom: 1 },
  th: { color: '#333333', fontWeight: 500, fontSize: 9.4 },
  row: { flexDirection: 'row', alignItems: 'center', borderBottom: '0.6 solid #BDBDBD', paddingVertical: 1.9 },
  time: { fontFamily: CONDENSED, fontWeight: 800, fontSize: 11.5, lineHeight: 1.15 },
  figure: { fontFamily: CONDENSED, fontWeight: 500 },
  foot: {
    position: 'absolute',
    left: MARGIN.side,
    right: MARGIN.side,
    bottom: 18,
    flexDirection: 'row',
    justifyContent: 'space-between',
    borderTop: '0.9 solid #000000',
    paddingTop: 3,
    fontSize: 9,
  },
})

/** The call sheet on paper, one page where it fits, its head on every further one; then everybody's slip. */
export async function printCallSheet(model: CallSheetModel, paper: Paper = 'A4'): Promise<Uint8Array> {
  const { width, height } = SIZES[paper]
  return printDocument(
    <Document title={`Call sheet: ${model.title}`} author="Emberslate" language="en" creationDate={NO_DATE}>
      <Page size={[width, height]} style={s.page}>
        <Head model={model} />
        <Facts model={model} />
        <DrawingOnPaper drawing={model.heatLine} width={width - 2 * MARGIN.side} />
        <Calls rows={model.calls} />
        <Below model={model} />
        <Foot model={model} />
      </Page>
      <SlipPages model={model} paper={paper} />
    </Document>,
  )
}

function Head({ model }: { model: CallSheetModel }) {
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

function Facts({ model }: { model: CallSheetModel }) {
  return (
    <View style={s.facts}>
      <View style={{ width: 84 }}>
        <Text style={s.small}>crew call</Text>
        <Text style={s.call}>{model.crewCall}</Text>
      </View>
      <Fact title="Place">{model.place}</Fact>
      <Fact title="Light and weather">{model.light}</Fact>
      <View style={{ flex: 1.15 }}>
        <Text style={s.bold}>If something happens</Text>
        <Blank label="Emergency number" />
        <Blank label="Nearest hospital" />
        <Text>{model.emergency}</Text>
      </View>
    </View>
  )
}

function Fact({ title, children }: { title: string; children: ReactNode }) {
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
  { title: 'likely', width: 42 },
  { title: 'moment', width: 84 },
  { title: 'shot', width: 122 },
  { title: 'early to late', width: 68 },
  { title: 'stand by at', width: 58 },
  { title: 'or when the probe reads', width: 92 },
  { title: 'who', width: 63 },
] as const

function Calls({ rows }: { rows: readonly CallRow[] }) {
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
        <CallLine key={`${row.likely} ${row.shot}`} row={row} />
      ))}
    </View>
  )
}

function CallLine({ row }: { row: CallRow }) {
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

function Below({ model }: { model: CallSheetModel }) {
  return (
    <View style={{ flexDirection: 'row', gap: 18, marginTop: 8 }}>
      <View style={{ flex: 1 }}>
        <OwnCalls model={model} />
      </View>
      <View style={{ flex: 1.1 }}>
        <Text style={s.h3}>Free shots, in the gaps</Text>
        <Text>{model.free.join(' · ') || 'None.'}</Text>
        {model.dropped.map((words) => (
          <Text key={words} style={{ marginTop: 3 }}>
            <Text style={s.bold}>Dropped: </Text>
            {words}
          </Text>
        ))}
      </View>
      <View style={{ flex: 1.1 }}>
        <Text style={s.h3}>Care</Text>
        {model.care.map((caution) => (
          <Text key={caution} style={{ marginBottom: 2 }}>
            {caution}
          </Text>
        ))}
        <Text style={{ marginTop: 2 }}>
          <Text style={s.bold}>Kit: </Text>
          {model.kit}
        </Text>
      </View>
    </View>
  )
}

function OwnCalls({ model }: { model: CallSheetModel }) {
  return (
    <>
      <View style={{ flexDirection: 'row', justifyContent: 'space-between' }}>
        <Text style={s.h3}>Your own call</Text>
        <Text style={s.th}>first setup</Text>
      </View>
      {model.own.map((own) => (
        <View key={own.name} style={s.row}>
          <Text style={{ flex: 1, lineHeight: 1.15 }}>
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

function Foot({ model }: { model: CallSheetModel }) {
  return (
    <View fixed style={s.foot}>
      <Text>{model.foot[0]}</Text>
      <Text>{model.foot[1]}</Text>
    </View>
  )
}
