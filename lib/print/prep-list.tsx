import { View } from '@react-pdf/renderer'
import type { PrepList } from '../export/prep-list'
import { ListTitle, listDocument, Ticked } from './list-frame'
import { ls } from './list-styles'
import { printDocument } from './render'
import type { Paper } from './sheet'
import { Words } from './words'

/** The prep list on paper. */
export const printPrepList = (list: PrepList, paper: Paper = 'A4'): Promise<Uint8Array> =>
  printDocument(
    listDocument({
      what: 'Prep list',
      title: list.title,
      day: list.day,
      revision: list.revision,
      paper,
      foot: 'Worked out from the plan; what it cannot know is written in by hand.',
      children: (
        <>
          <Ahead list={list} />
          <Shopping list={list} />
          <Plain title="Fuel" lines={list.fuel} />
          <Plain title="Thermometers, before anything is cooked" lines={list.thermometers} />
          <Plain title="Kit" lines={list.kit} />
          <Shots list={list} />
        </>
      ),
    }),
  )

type Part = { readonly list: PrepList }

const Ahead = ({ list }: Part) => (
  <>
    <ListTitle>Ahead</ListTitle>
    {list.ahead.map(({ when, what }) => (
      <Ticked key={what}>
        <Words style={[ls.bold, { width: 122 }]}>{when}</Words>
        <Words style={{ flex: 1 }}>{what}</Words>
      </Ticked>
    ))}
  </>
)

const Shopping = ({ list }: Part) => (
  <>
    <ListTitle>Shopping</ListTitle>
    <View style={{ flexDirection: 'row', flexWrap: 'wrap', columnGap: 24 }}>
      {list.shopping.map(({ what, much }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an ingredient may stand there twice
        <View key={i} style={{ width: '47%' }}>
          <Ticked>
            <Words style={{ flex: 1 }}>{what}</Words>
            <Words style={[ls.bold, { maxWidth: 110, textAlign: 'right' }]}>{much}</Words>
          </Ticked>
        </View>
      ))}
    </View>
  </>
)

const Plain = ({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) =>
  lines.length === 0 ? null : (
    <>
      <ListTitle>{title}</ListTitle>
      {lines.map((words) => (
        <Ticked key={words}>
          <Words style={{ flex: 1 }}>{words}</Words>
        </Ticked>
      ))}
    </>
  )

/** The lens is not in the plan: a column to write it in. */
const COLUMNS = [
  { title: 'set up', width: 40 },
  { title: 'shot', width: 216 },
  { title: 'camera', width: 38 },
  { title: 'lens', width: 52 },
  { title: 'place', width: 82 },
  { title: 'also', width: 52 },
] as const
const widthOf = (i: number) => COLUMNS[i]?.width ?? 60

const Shots = ({ list }: Part) =>
  list.shots.length === 0 ? null : (
    <>
      <ListTitle>Kit by shot</ListTitle>
      <View>
        <View fixed style={[ls.row, { borderBottom: '0.9 solid #000000', paddingVertical: 1 }]}>
          <View style={{ width: 9 }} />
          {COLUMNS.map(({ title, width }, i) => (
            <Words key={title} style={[ls.th, { width, flexGrow: i === COLUMNS.length - 1 ? 1 : 0 }]}>
              {title}
            </Words>
          ))}
        </View>
        {list.shots.map((row) => (
          <Ticked key={`${row.time} ${row.shot}`}>
            <Words style={[ls.time, { width: widthOf(0) }]}>{row.time}</Words>
            <Words style={{ width: widthOf(1) }}>{row.shot}</Words>
            <Words style={{ width: widthOf(2) }}>{row.camera}</Words>
            <View style={{ width: widthOf(3), borderBottom: '0.6 solid #777777', height: 12 }} />
            <Words style={{ width: widthOf(4) }}>{row.place}</Words>
            <Words style={[ls.small, { width: widthOf(5), flexGrow: 1 }]}>{row.needs}</Words>
          </Ticked>
        ))}
      </View>
    </>
  )
