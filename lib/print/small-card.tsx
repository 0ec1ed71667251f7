import { Document, Page, View } from '@react-pdf/renderer'
import type { CardLine, CardModel } from '../export/card'
import type { QrDrawing } from '../export/qr'
import { Code } from './card-code'
import { type Lettering, set, under } from './card-lettering'
import { aboutCard, Cautions } from './card-parts'
import { CardTable, type Column } from './card-table'
import { PRINT } from './sheet'
import { Words } from './words'

/** A6, lying: 148 x 105 mm. */
const SIZE = [419.53, 297.64] as const
const MARGIN = 20
const WIDTH = SIZE[0] - 2 * MARGIN
const NEEDS = 128
const GAP = 16
/** Tables and cautions at this share of the sheet's own size: 8 pt. */
const SCALE = 0.85
const TITLE: Lettering = { face: 'serif', weight: 600, size: 17, lineHeight: 1.08 }
const WORDS: Lettering = { face: 'serif', weight: 400, size: 8.6, lineHeight: 1.28 }
const SMALL: Lettering = { face: 'sans', weight: 400, size: 8, lineHeight: 1.2 }
const FIGURES: Lettering = { face: 'condensed', weight: 700, size: 8, lineHeight: 1.2 }

/** A step in short: its first sentence. */
function shortRuns({ runs }: CardLine): CardLine['runs'] {
  const words = runs.map((run) => run.text).join('')
  const end = words.search(/[.!?](?=\s|$)(?<!statement:)/) + 1 || words.length
  let left = end
  return runs.flatMap((run) => {
    const text = run.text.slice(0, Math.max(0, left))
    left -= run.text.length
    return text === '' ? [] : [{ ...run, text }]
  })
}

function Title({ model }: { model: CardModel }) {
  return (
    <View style={{ paddingBottom: 5, marginBottom: 6, ...under(1.3) }}>
      <Words style={set(TITLE)}>{model.title}</Words>
    </View>
  )
}

function Needs({ model, code }: { model: CardModel; code: QrDrawing | null }) {
  const { at } = model.published
  return (
    <View style={{ width: NEEDS }}>
      {model.ingredients.map((row, i) => (
        <View
          // biome-ignore lint/suspicious/noArrayIndexKey: the same thing may be wanted twice
          key={i}
          wrap={false}
          style={{
            flexDirection: 'row',
            justifyContent: 'space-between',
            paddingVertical: 1.5,
            ...under(0.5, PRINT.rule),
          }}
        >
          <Words style={{ ...set(SMALL), flex: 1, paddingRight: 6 }}>{row.what}</Words>
          <Words style={{ ...set(FIGURES), maxWidth: '56%', textAlign: 'right' }}>
            {row.other === '' ? row.much : `${row.much} / ${row.other}`}
          </Words>
        </View>
      ))}
      {model.recipe.allergens !== '' && <Words style={{ ...set(SMALL), marginTop: 4 }}>{model.recipe.allergens}</Words>}
      {code !== null && at !== null && <Code code={code} at={at} words="The whole card." width={NEEDS} />}
    </View>
  )
}

const Steps = ({ model }: { model: CardModel }) => (
  <View style={{ flex: 1, marginLeft: GAP }}>
    {model.steps.map((line) => (
      <View key={line.no} wrap={false} style={{ flexDirection: 'row', marginBottom: 3 }}>
        <Words style={{ ...set(WORDS), fontWeight: 600, width: 14 }}>{line.no}</Words>
        <Words style={{ ...set(WORDS), flex: 1 }}>
          {shortRuns(line).map((run, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: runs of one line never move
            <Words key={i} style={run.strong ? { fontWeight: 600 } : run.own ? { fontStyle: 'italic' } : {}}>
              {run.text}
            </Words>
          ))}
        </Words>
      </View>
    ))}
  </View>
)

const KNOW: readonly Column[] = [
  { head: 'stage', share: 0.18 },
  { head: 'by its temperature', share: 0.5 },
  { head: 'roughly', share: 0.32 },
]
function Overleaf({ model }: { model: CardModel }) {
  const rows = model.howToKnow.map(({ id, stage, know, roughly }) => ({ id, cells: [stage, know, roughly] }))
  return (
    <View>
      <CardTable columns={KNOW} rows={rows} width={WIDTH} scale={SCALE} />
      <Cautions sentences={model.cautions} scale={SCALE} />
    </View>
  )
}

/** The card for the pocket and the side of the cooker: what is needed and done on one side, what to go by and to beware of on the other. */
export function SmallCard({ model, code, date }: { model: CardModel; code: QrDrawing | null; date: Date }) {
  const page = { padding: MARGIN, color: PRINT.ink }
  return (
    <Document {...aboutCard(model, date)}>
      <Page size={[...SIZE]} style={page}>
        <Title model={model} />
        <View style={{ flexDirection: 'row' }}>
          <Needs model={model} code={code} />
          <Steps model={model} />
        </View>
      </Page>
      <Page size={[...SIZE]} style={page}>
        <Overleaf model={model} />
      </Page>
    </Document>
  )
}
