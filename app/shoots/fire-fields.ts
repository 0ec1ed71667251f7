import type { CookerKind } from '@/lib/model/cook'
import { COOKERS } from '@/lib/model/cooker'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { asText, type DocumentField, type FieldGroup, optional, plain } from './document-fields'

type StageDocument = { do?: string; in?: string; [key: string]: unknown }
const stagesOf = (document: ShootDocument, cook: number) =>
  (valueAt(document, `/cooks/${cook}/stages`) as StageDocument[] | undefined) ?? []
const habitsOf = (document: ShootDocument, cook: number) => {
  const kind = valueAt(document, `/cooks/${cook}/cooker/kind`)
  return typeof kind === 'string' && kind in COOKERS ? COOKERS[kind as CookerKind] : undefined
}

/** A choice that is left out of the file where it is the usual one. */
function choice(
  key: string,
  label: string,
  pointer: string,
  options: DocumentField['options'],
  why?: string,
): DocumentField {
  const usual = options?.[0]?.[0] ?? ''
  return {
    key,
    label,
    why,
    pointers: [pointer],
    options,
    read: (document) => asText(valueAt(document, pointer)) || usual,
    write: (document, text) => (text === usual ? removeAt(document, pointer) : setAt(document, pointer, text)),
  }
}
/** A yes or no, kept as true or false. */
const yesOrNo = (
  key: string,
  label: string,
  pointer: string,
  usual: boolean,
  [yes, no]: readonly [string, string],
): DocumentField => ({
  key,
  label,
  pointers: [pointer],
  options: [
    ['yes', yes],
    ['no', no],
  ],
  read: (document) => ((valueAt(document, pointer) ?? usual) ? 'yes' : 'no'),
  write: (document, text) => {
    const said = text === 'yes'
    return said === usual ? removeAt(document, pointer) : setAt(document, pointer, said)
  },
})

/** Each refuel as "1 kg at 3 h", a comma between two. */
function refuelField(cook: number): DocumentField {
  const pointer = `/cooks/${cook}/cooker/refuel`
  return {
    key: `refuel-${cook}`,
    label: 'Fuel added later',
    why: 'Such as "1 kg at 3 h, 1 kg at 6 h", counted from meat on.',
    pointers: [pointer],
    read: (document) => {
      const list = valueAt(document, pointer)
      return Array.isArray(list)
        ? list.map((each) => `${asText(each?.add)}${each?.at === undefined ? '' : ` at ${asText(each.at)}`}`).join(', ')
        : ''
    },
    write: (document, text) => {
      if (text.trim() === '') return removeAt(document, pointer)
      const list = text.split(',').map((part) => {
        const [add, at] = part.split(/ at /)
        return at === undefined ? { add: part.trim() } : { at: at.trim(), add: (add ?? '').trim() }
      })
      return setAt(document, pointer, list)
    },
  }
}

function holdFields(document: ShootDocument, cook: number): DocumentField[] {
  const at = `/cooks/${cook}/stages`
  const index = stagesOf(document, cook).findIndex((stage) => stage?.do === 'hold')
  const hold = `${at}/${index}`
  const place: DocumentField = {
    key: `hold-${cook}`,
    label: 'Held warm before the slice',
    pointers: index < 0 ? [] : [`${hold}/in`],
    options: [
      ['no', 'no'],
      ['cooker', 'in the cooker'],
      ['oven', 'in a warm oven'],
      ['box', 'wrapped, in an insulated box'],
    ],
    read: () => (index < 0 ? 'no' : asText(valueAt(document, `${hold}/in`)) || 'cooker'),
    write: (edited, text) => {
      const stages = stagesOf(edited, cook)
      const old = stages.find((stage) => stage.do === 'hold')
      const others = stages.filter((stage) => stage !== old)
      if (text === 'no') return setAt(edited, at, others)
      const heat = text === 'box' ? {} : { at: old?.at ?? '65 °C' }
      const held = { do: 'hold', in: text, ...heat, until: old?.until ?? { after: '60 min' } }
      const stands = index < 0 ? others.length : index
      return setAt(edited, at, [...others.slice(0, stands), held, ...others.slice(stands)])
    },
  }
  if (index < 0) return [place]
  const boxed = valueAt(document, `${hold}/in`) === 'box'
  return [
    place,
    ...(boxed ? [] : [plain(`hold-at-${cook}`, 'Held at', `${hold}/at`)]),
    plain(`hold-for-${cook}`, 'Held for', `${hold}/until/after`),
  ]
}

function restFields(document: ShootDocument, cook: number): DocumentField[] {
  const index = stagesOf(document, cook).findIndex((stage) => stage?.do === 'rest')
  if (index < 0) return []
  const rest = `/cooks/${cook}/stages/${index}`
  return [
    choice(`rest-on-${cook}`, 'Rests on', `${rest}/on`, [
      ['rack', 'a rack'],
      ['board', 'a board'],
    ]),
    choice(`rest-cover-${cook}`, 'Rests under', `${rest}/cover`, [
      ['open', 'nothing'],
      ['tent', 'a tent of foil'],
    ]),
    choice(`rest-where-${cook}`, 'Rests where', `${rest}/where`, [
      ['', 'beside the cooker'],
      ['indoors', 'indoors'],
      ['outdoors', 'outdoors'],
    ]),
  ]
}

/** What is rarely needed of fire, rest and hold, cook by cook. */
export function fireGroup(document: ShootDocument, cook: number, name: string): FieldGroup {
  const cooker = `/cooks/${cook}/cooker`
  const habits = habitsOf(document, cook)
  const burns = habits?.fuel !== undefined
  const said = (key: string) => valueAt(document, `${cooker}/${key}`) !== undefined
  return {
    title: `Fire, rest and hold${name}`,
    folded: true,
    fields: [
      ...(burns || said('fuel')
        ? [
            optional(`fuel-${cook}`, 'Fuel lit', `${cooker}/fuel`, {
              why: 'Its mass, such as "2 kg". Empty means: fed as it needs.',
            }),
          ]
        : []),
      ...((burns && said('fuel')) || said('refuel') ? [refuelField(cook)] : []),
      ...(habits?.indoors === false || said('deflector')
        ? [
            yesOrNo(`deflector-${cook}`, 'Between meat and fire', `${cooker}/deflector`, true, [
              'a deflector, or the meat lies aside',
              'nothing',
            ]),
          ]
        : []),
      ...(habits?.indoors === false || said('sheltered')
        ? [yesOrNo(`sheltered-${cook}`, 'Out of the wind', `${cooker}/sheltered`, false, ['yes, sheltered', 'no'])]
        : []),
      ...restFields(document, cook),
      ...holdFields(document, cook),
    ],
  }
}
