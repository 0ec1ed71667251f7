import { setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { FOOD_STATES, LIGHTS } from '@/lib/plan/vocabulary'
import { foodOf, peopleOf, placeOf, priorityOf, rollOf, setupOf, titleOfShot, whenOf } from '../../../words/day'
import { asText, type DocumentField, optional, plain } from '../../document-fields'
import { momentChoices } from './moment-choices'
import { formOf, listed, NEEDS_PRIORITY, words, writeForm } from './shot-fields'

/** The columns of the table that are written in; the rest of a shot is under "More". */
export const COLUMNS = ['when', 'place', 'people', 'setup', 'roll', 'gives way', 'food'] as const
export type Column = (typeof COLUMNS)[number]
export type Cells = { readonly title: DocumentField } & Readonly<Record<Column, DocumentField | null>>

export function shotCells(document: ShootDocument, index: number): Cells {
  const at = `/shots/${index}`
  const shot = (valueAt(document, at) as Record<string, unknown>) ?? {}
  const name = asText(shot.title) || `shot ${index + 1}`
  const form = formOf(shot)
  return {
    title: plain(`${at}-c-title`, titleOfShot(index + 1), `${at}/title`),
    when: whenField(document, at, whenOf(name)),
    place: optional(`${at}-c-place`, placeOf(name), `${at}/place`),
    people: listed(`${at}-c-needs`, peopleOf(name), `${at}/needs`),
    setup: optional(`${at}-c-setup`, setupOf(name), `${at}/setup`),
    roll: form === 'at' || form === 'locked' ? null : optional(`${at}-c-roll`, rollOf(name), `${at}/roll`),
    'gives way': plain(`${at}-c-priority`, priorityOf(name), `${at}/priority`, {
      options: NEEDS_PRIORITY.map(([word]) => [word, word]),
      read: (d) => asText(valueAt(d, `${at}/priority`)) || 'should',
    }),
    food: optional(`${at}-c-state`, foodOf(name), `${at}/state`, { options: [['', '–'], ...words(FOOD_STATES)] }),
  }
}

/** One choice for both: how a shot stands in the day, and at which moment or in which light. */
function whenField(document: ShootDocument, at: string, label: string): DocumentField {
  const moments = momentChoices(document, at)
  const tail = (edge: unknown) => moments.find(([id]) => id === edge)?.[1] ?? asText(edge)
  const edges = (a: unknown, b: unknown) => (a || b ? `: ${tail(a)} to ${tail(b)}` : '')
  const value = (pointer: string) => valueAt(document, at + pointer)
  return {
    key: `${at}-c-when`,
    label,
    pointers: ['/at', '/between', '/from', '/to', '/light', '/free', '/locked'].map((key) => at + key),
    options: [
      ['free', 'any time'],
      ...moments.map(([id, words]) => [`at:${id}`, words] as const),
      ['between', `between${edges(value('/between/0'), value('/between/1'))}`],
      ['locked', `locked off${edges(value('/from'), value('/to'))}`],
      ...LIGHTS.map((light) => [`light:${light}`, light.replaceAll('-', ' ')] as const),
    ],
    read: (d) => {
      const shot = (valueAt(d, at) as Record<string, unknown>) ?? {}
      const form = formOf(shot)
      if (form === 'at') return `at:${asText(valueAt(d, `${at}/at/moment`))}`
      return form === 'light' ? `light:${asText(shot.light)}` : form
    },
    write: (d, text) => {
      const [form = 'free', which] = text.split(':')
      const formed = formOf((valueAt(d, at) as Record<string, unknown>) ?? {}) === form ? d : writeForm(d, at, form)
      if (which === undefined) return formed
      return setAt(formed, form === 'at' ? `${at}/at/moment` : `${at}/light`, which)
    },
  }
}
