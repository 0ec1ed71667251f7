import { View } from '@react-pdf/renderer'
import type { RiskLine, RiskSheet } from '../export/risk-sheet'
import { Blank } from './blank'
import { ListTitle, listDocument, Ticked } from './list-frame'
import { ls } from './list-styles'
import { printDocument, sheetsIn } from './render'
import type { Paper } from './sheet'
import { Words } from './words'

/** Points tried, greatest first: one sheet hangs by the cooker, a second one gets lost. */
const SIZES_PT = [10.2, 9.8, 9.4, 9]

/** The risk sheet on paper, to be ticked at call and hung by the cooker. */
export async function printRiskSheet(sheet: RiskSheet, paper: Paper = 'A4'): Promise<Uint8Array> {
  for (const size of SIZES_PT) {
    const bytes = await printDocument(riskDocument(sheet, paper, size))
    if (sheetsIn(bytes) === 1) return bytes
  }
  return printDocument(riskDocument(sheet, paper, SIZES_PT[0] as number))
}

const riskDocument = (sheet: RiskSheet, paper: Paper, size: number) =>
  listDocument({
    what: 'Risk sheet',
    title: sheet.title,
    day: sheet.day,
    revision: sheet.revision,
    paper,
    size,
    foot: 'Hangs by the cooker. Local rules go before it.',
    children: (
      <>
        <Told sheet={sheet} />
        {sheet.groups.map(({ title, lines }) => (
          <Group key={title} title={title} lines={lines} />
        ))}
        <Signed sheet={sheet} />
      </>
    ),
  })

/** What the producer confirms on the day. */
function Told({ sheet }: { readonly sheet: RiskSheet }) {
  const facts = [
    ['Person responsible', sheet.responsible],
    ['Fire restrictions today', sheet.fireRules],
    ['Emergency number', sheet.emergency],
    ['Nearest hospital', sheet.hospital],
  ] as const
  return (
    <View style={{ flexDirection: 'row', flexWrap: 'wrap', columnGap: 24, rowGap: 4 }}>
      {facts.map(([label, words]) => (
        <View key={label} style={{ width: '47%' }}>
          {words === null ? (
            <Blank label={label} />
          ) : (
            <Words>
              {label}: <Words style={ls.bold}>{words}</Words>
            </Words>
          )}
        </View>
      ))}
    </View>
  )
}

const Group = ({ title, lines }: { readonly title: string; readonly lines: readonly RiskLine[] }) => (
  <>
    <ListTitle>{title}</ListTitle>
    {lines.map(({ hazard, does, who }) => (
      <Ticked key={hazard}>
        <Words style={[ls.bold, { width: 92 }]}>{hazard}</Words>
        <Words style={{ flex: 1 }}>{does}</Words>
        {who === '' ? (
          <View style={{ width: 76, borderBottom: '0.6 solid #777777', height: 12 }} />
        ) : (
          <Words style={{ width: 76 }}>{who}</Words>
        )}
      </Ticked>
    ))}
  </>
)

const Signed = ({ sheet }: { readonly sheet: RiskSheet }) => (
  <View wrap={false} style={{ marginTop: 10 }}>
    <Words style={ls.small}>{sheet.defers}</Words>
    <View style={{ flexDirection: 'row', gap: 24, marginTop: 12 }}>
      <View style={{ flex: 1 }}>
        <Blank label="Read at call, time" />
      </View>
      <View style={{ flex: 1.6 }}>
        <Blank label="Signed" />
      </View>
    </View>
  </View>
)
