import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import { cookerName } from '@/lib/plan/moments'
import type { ShootDocument } from '@/lib/plan/shoot'
import * as words from '../words/plan'
import { asText, type DocumentField } from './document-fields'

/** A cooker that was kept, as a plan may start from it. */
export interface RememberedCooker {
  readonly name: string
  readonly kind: string
  readonly cooks: number
  /** As the shoot file writes it. */
  readonly memory: Readonly<Record<string, unknown>>
  /** "It runs 6 °C under its dial, give or take 3." */
  readonly says: string
}

const AS_FILED = ' as filed'
const cooksWords = (cooks: unknown) => (cooks === 1 ? words.oneCook : words.cooks(asText(cooks)))

/** Which cooker of its kind it is: what it has taught is then the forecast's start. Nothing is asked where none is known. */
export function rememberedFields(
  document: ShootDocument,
  cook: number,
  cookers: readonly RememberedCooker[],
): readonly DocumentField[] {
  const at = `/cooks/${cook}/cooker`
  const kind = asText(valueAt(document, `${at}/kind`))
  const alike = cookers.filter((one) => one.kind === kind)
  const filed = valueAt(document, `${at}/memory`) as { cooks?: unknown } | undefined
  if (alike.length === 0 && filed === undefined) return []
  const chosen = (edited: ShootDocument) => {
    const memory = valueAt(edited, `${at}/memory`)
    if (memory === undefined) return ''
    const known = alike.find(({ name }) => name === valueAt(edited, `${at}/name`))
    return known && same(known.memory, memory) ? known.name : AS_FILED
  }
  const now = chosen(document)
  const name = asText(valueAt(document, `${at}/name`)) || words.thisOne
  return [
    {
      key: `remembered-${cook}`,
      label: words.whichOne,
      why: alike.find((one) => one.name === now)?.says ?? words.rememberedWhy,
      pointers: [`${at}/memory`, `${at}/name`],
      options: [
        ['', words.anyOf(cookerName(kind))],
        ...alike.map((one) => [one.name, words.rememberedFrom(one.name, cooksWords(one.cooks))] as const),
        ...(now === AS_FILED ? [[AS_FILED, words.asAfter(name, cooksWords(filed?.cooks))] as const] : []),
      ],
      read: chosen,
      write: (edited, text) => {
        if (text === AS_FILED) return edited
        const known = alike.find((one) => one.name === text)
        if (!known) return forgotten(edited, cook)
        return setAt(setAt(edited, `${at}/name`, known.name), `${at}/memory`, known.memory)
      },
    },
  ]
}
/** Any of its kind again. */
export const forgotten = (document: ShootDocument, cook: number): ShootDocument =>
  removeAt(removeAt(document, `/cooks/${cook}/cooker/memory`), `/cooks/${cook}/cooker/name`)

/** Whatever order their keys stand in. */
const same = (a: unknown, b: unknown) => inOrder(a) === inOrder(b)
const inOrder = (value: unknown) => JSON.stringify(Object.entries(value ?? {}).sort(([a], [b]) => (a < b ? -1 : 1)))
