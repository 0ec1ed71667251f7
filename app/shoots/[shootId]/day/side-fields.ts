import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { listAt } from '@/lib/plan/sketch'
import { hands, heat, side, sideHandsWhy, sideHeatWhy, sideTakesWhy, takes, when } from '../../../words/day'
import { asText, type DocumentField, optional, plain } from '../../document-fields'
import { cookField, listed } from './shot-fields'

/** When a side is in: it goes on at a moment, or is done by one. */
const WHEN = [
  ['ready first-slice', 'done by the first slice'],
  ['ready off-heat', 'done as the roast comes off'],
  ['ready pull', 'done by the pull'],
  ['from meat-on', 'on with the roast'],
  ['from turn', 'on at the turn'],
  ['from probe-in', 'on as the probe goes in'],
] as const

function whenField(at: string, moments: ReadonlySet<string>): DocumentField {
  const read = (document: ShootDocument) => {
    const from = asText(valueAt(document, `${at}/from`))
    return from ? `from ${from}` : `ready ${asText(valueAt(document, `${at}/ready`)) || 'first-slice'}`
  }
  return {
    key: `${at}-when`,
    label: when,
    pointers: [`${at}/from`, `${at}/ready`],
    options: WHEN.filter(([value]) => value !== 'from turn' || moments.has('turn')),
    read,
    write: (document, text) => {
      const [key = 'ready', moment = 'first-slice'] = text.split(' ')
      const bare = removeAt(removeAt(document, `${at}/from`), `${at}/ready`)
      return setAt(bare, `${at}/${key}`, moment)
    },
  }
}

/** All that side number `index` says. */
export function sideFields(document: ShootDocument, index: number): readonly DocumentField[] {
  const at = `/sides/${index}`
  const turns = listAt<{ stages?: unknown }>(document, '/cooks').some(
    ({ stages }) => Array.isArray(stages) && stages.some((stage) => valueAt(stage, '/turn') !== undefined),
  )
  return [
    plain(`${at}-title`, side, `${at}/title`, { pointers: [`${at}/title`, `${at}/id`] }),
    plain(`${at}-takes`, takes, `${at}/takes`, { why: sideTakesWhy }),
    optional(`${at}-at`, heat, `${at}/at`, {
      why: sideHeatWhy,
    }),
    whenField(at, new Set(turns ? ['turn'] : [])),
    listed(`${at}-needs`, hands, `${at}/needs`, sideHandsWhy),
    ...cookField(document, at),
  ]
}
