import type { CookerKind } from '@/lib/model/cook'
import { COOKERS } from '@/lib/model/cooker'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import * as words from '../words/plan'
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
    label: words.refuel,
    why: words.refuelWhy,
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
    label: words.held,
    pointers: index < 0 ? [] : [`${hold}/in`],
    options: [
      ['no', words.no],
      ['cooker', words.inCooker],
      ['oven', words.inOven],
      ['box', words.inBox],
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
    ...(boxed ? [] : [plain(`hold-at-${cook}`, words.heldAt, `${hold}/at`)]),
    plain(`hold-for-${cook}`, words.heldTime, `${hold}/until/after`),
  ]
}

function restFields(document: ShootDocument, cook: number): DocumentField[] {
  const index = stagesOf(document, cook).findIndex((stage) => stage?.do === 'rest')
  if (index < 0) return []
  const rest = `/cooks/${cook}/stages/${index}`
  return [
    plain(`rest-${cook}`, words.rest, `${rest}/until/after`),
    choice(`rest-on-${cook}`, words.restsOn, `${rest}/on`, [
      ['rack', words.rack],
      ['board', words.board],
    ]),
    choice(`rest-cover-${cook}`, words.restsUnder, `${rest}/cover`, [
      ['open', words.nothing],
      ['tent', words.tent],
    ]),
    choice(`rest-where-${cook}`, words.restsWhere, `${rest}/where`, [
      ['', words.besideCooker],
      ['indoors', words.indoors],
      ['outdoors', words.outdoors],
    ]),
  ]
}

/** "8 kg of fuel, rests 15 min, held 2 h". */
function saysOf(document: ShootDocument, cook: number, burns: boolean): string {
  const text = (value: unknown, path: string) => asText(valueAt(value, path))
  const stages = stagesOf(document, cook)
  const [rest, hold] = ['rest', 'hold'].map((kind) => stages.find((stage) => stage?.do === kind))
  const fuel = text(document, `/cooks/${cook}/cooker/fuel`)
  const [rests, holds] = [text(rest, '/until/after'), text(hold, '/until/after')]
  return [
    ...(fuel ? [words.fuelOf(fuel)] : burns ? [words.fedAsNeeded] : []),
    ...(rests ? [words.restsFor(rests)] : []),
    ...(holds ? [words.heldFor(holds)] : []),
  ].join(', ')
}

/** What is rarely needed of fire, rest and hold, cook by cook. */
export function fireGroup(document: ShootDocument, cook: number, name: string): FieldGroup {
  const cooker = `/cooks/${cook}/cooker`
  const habits = habitsOf(document, cook)
  const burns = habits?.fuel !== undefined
  const said = (key: string) => valueAt(document, `${cooker}/${key}`) !== undefined
  return {
    key: `fire-${cook}`,
    title: words.fire(name),
    says: saysOf(document, cook, burns),
    fields: [
      ...(burns || said('fuel')
        ? [
            optional(`fuel-${cook}`, words.fuel, `${cooker}/fuel`, {
              why: words.fuelWhy,
            }),
          ]
        : []),
      ...((burns && said('fuel')) || said('refuel') ? [refuelField(cook)] : []),
      ...(habits?.indoors === false || said('deflector')
        ? [yesOrNo(`deflector-${cook}`, words.deflector, `${cooker}/deflector`, true, [words.deflected, words.nothing])]
        : []),
      ...(habits?.indoors === false || said('sheltered')
        ? [yesOrNo(`sheltered-${cook}`, words.sheltered, `${cooker}/sheltered`, false, [words.isSheltered, words.no])]
        : []),
      ...restFields(document, cook),
      ...holdFields(document, cook),
    ],
  }
}
