import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import { canPin } from '@/lib/plan/edit-shots'
import { sidesOf } from '@/lib/plan/edit-sides'
import type { ShootDocument } from '@/lib/plan/shoot'
import { FOOD_STATES, LIGHTS } from '@/lib/plan/vocabulary'
import {
  camera,
  camerasWhy,
  camerasWords,
  food,
  fromWords,
  holdAfter,
  ifSomethingMustGive,
  lengthWords,
  lid,
  lightWords,
  momentWords,
  needsWhy,
  needsWords,
  newShot,
  notAfter,
  notBefore,
  personWords,
  pinnedAt,
  pinnedWhy,
  place,
  roast,
  rolesOf,
  rolesWhy,
  rollBefore,
  setupWords,
  shotWords,
  toWords,
  when,
} from '../../../words/day'
import { asText, type DocumentField, optional, plain, timeOfDay } from '../../document-fields'
import { momentChoices } from './moment-choices'

/** How a shot stands in the day. One of these, never two. */
export const FORMS = [
  ['at', 'at a moment'],
  ['between', 'between two moments'],
  ['locked', 'locked off, from one to another'],
  ['free', 'any time'],
  ['light', 'in a light'],
] as const
export type ShotForm = (typeof FORMS)[number][0]

const FORM_KEYS = ['at', 'between', 'from', 'to', 'locked', 'free', 'light'] as const
const FRESH: Record<ShotForm, Record<string, unknown>> = {
  at: { at: { moment: 'pull', before: '1 min', after: '2 min' } },
  between: { between: ['meat-on', 'pull'] },
  locked: { from: 'meat-on', to: 'off-heat', locked: true },
  free: { free: true },
  light: { light: 'golden-hour' },
}

export function formOf(shot: Record<string, unknown>): ShotForm {
  if (shot.at) return 'at'
  if (shot.between) return 'between'
  if (shot.from || shot.to) return 'locked'
  return shot.light ? 'light' : 'free'
}

export const words = (list: readonly string[]) => list.map((word) => [word, word.replaceAll('-', ' ')] as const)
const orNone = (list: readonly (readonly [string, string])[], none: string) => [['', none] as const, ...list]

/** A list written as words with commas between. */
export function listed(key: string, label: string, pointer: string, why?: string): DocumentField {
  return optional(key, label, pointer, {
    why,
    read: (document) => {
      const list = valueAt(document, pointer)
      return Array.isArray(list) ? list.join(', ') : asText(list)
    },
    write: (document, text) => {
      const list = text.split(/,\s*/).filter((word, i, all) => word !== '' || i === all.length - 1)
      return text.trim() === '' ? removeAt(document, pointer) : setAt(document, pointer, list)
    },
  })
}

function formField(at: string): DocumentField {
  return {
    key: `${at}-form`,
    label: when,
    pointers: [],
    options: FORMS,
    read: (document) => formOf((valueAt(document, at) as Record<string, unknown>) ?? {}),
    write: (document, form) => writeForm(document, at, form),
  }
}
export function writeForm(document: ShootDocument, at: string, form: string): ShootDocument {
  const shot = { ...(valueAt(document, at) as Record<string, unknown>) }
  for (const key of FORM_KEYS) delete shot[key]
  // Moments say when these begin and end; a length or a pin beside them is refused.
  if (form === 'at' || form === 'locked') for (const key of ['roll', 'pin']) delete shot[key]
  return setAt(document, at, { ...shot, ...FRESH[form as ShotForm] })
}

export const NEEDS_PRIORITY = [
  ['must', 'must be had'],
  ['should', 'should be had'],
  ['could', 'could be dropped'],
] as const
/** Shown in the table too, wherever it is wide enough for its columns. */
const IN_TABLE = ['setup', 'needs', 'place', 'state', 'priority', 'roll']
/** The title stands in its row on every screen. */
export const isBelow = ({ key }: DocumentField) => !key.endsWith('-title')
export const isInTable = ({ key }: DocumentField) => IN_TABLE.some((name) => key.endsWith(`-${name}`))

function whenFields(document: ShootDocument, at: string, form: ShotForm): readonly DocumentField[] {
  const moments = momentChoices(document, at)
  if (form === 'at')
    return [
      plain(`${at}-moment`, momentWords, `${at}/at/moment`, { options: moments }),
      optional(`${at}-before`, rollBefore, `${at}/at/before`),
      optional(`${at}-after`, holdAfter, `${at}/at/after`),
    ]
  const roll = optional(`${at}-roll`, lengthWords, `${at}/roll`)
  if (form === 'between')
    return [
      plain(`${at}-b0`, notBefore, `${at}/between/0`, { options: moments }),
      plain(`${at}-b1`, notAfter, `${at}/between/1`, { options: moments }),
      roll,
    ]
  if (form === 'locked')
    return [
      plain(`${at}-from`, fromWords, `${at}/from`, { options: moments }),
      plain(`${at}-to`, toWords, `${at}/to`, { options: moments }),
    ]
  if (form === 'light') return [plain(`${at}-light`, lightWords, `${at}/light`, { options: words(LIGHTS) }), roll]
  return [roll]
}

/** It then stands at this minute, come what may. */
const pinField = (at: string) =>
  timeOfDay(`${at}-pin`, pinnedAt, `${at}/pin`, {
    why: pinnedWhy,
  })

/** Which roast, where there are several. */
export function cookField(document: ShootDocument, at: string): readonly DocumentField[] {
  const cooks = ((valueAt(document, '/cooks') as { id?: string }[] | undefined) ?? []).map((cook) => asText(cook?.id))
  // A shot may be of a side too; a task or a side itself is of a roast.
  const sides = at.startsWith('/shots') ? sidesOf(document) : []
  if (cooks.length + sides.length < 2) return []
  const options = [
    ...cooks.map((id) => [id, id] as const),
    ...sides.map(({ id, title }) => [id, asText(title) || id] as const),
  ]
  return [
    optional(`${at}-cook`, roast, `${at}/cook`, {
      options,
      read: (d) => asText(valueAt(d, `${at}/cook`)) || asText(cooks[0]),
    }),
  ]
}

/** All that a shot says, for shot number `index` of the document. */
export function shotFields(
  document: ShootDocument,
  index: number,
  cameras: readonly string[],
): readonly DocumentField[] {
  const at = `/shots/${index}`
  const shot = (valueAt(document, at) as Record<string, unknown>) ?? {}
  return [
    plain(`${at}-title`, shotWords, `${at}/title`),
    formField(at),
    ...whenFields(document, at, formOf(shot)),
    optional(`${at}-setup`, setupWords, `${at}/setup`),
    listed(`${at}-needs`, needsWords, `${at}/needs`, needsWhy),
    optional(`${at}-camera`, camera, `${at}/camera`, { options: orNone(words(cameras), 'whichever is free') }),
    optional(`${at}-place`, place, `${at}/place`),
    ...(canPin(shot as { id: string }) ? [pinField(at)] : []),
    ...cookField(document, at),
    optional(`${at}-lid`, lid, `${at}/lid`, { options: orNone(words(['open', 'shut', 'any']), 'no matter') }),
    optional(`${at}-state`, food, `${at}/state`, { options: orNone(words(FOOD_STATES), 'no matter') }),
    plain(`${at}-priority`, ifSomethingMustGive, `${at}/priority`, {
      options: NEEDS_PRIORITY,
      read: (d) => asText(valueAt(d, `${at}/priority`)) || 'should',
    }),
  ]
}

/** A shot that asks for nothing yet. */
export const freshShot = (id: string) => ({
  id,
  title: newShot,
  free: true,
  setup: '5 min',
  roll: '4 min',
  needs: ['camera'],
  priority: 'should',
})

type Person = { id?: string }
export const peopleOf = (document: ShootDocument) => (valueAt(document, '/people') as Person[] | undefined) ?? []

const camerasField = optional('cameras', camerasWords, '/cameras', {
  why: camerasWhy,
  read: (document) =>
    ((valueAt(document, '/cameras') as { id?: string }[] | undefined) ?? []).map((c) => c.id).join(', '),
  write: (document, text) => {
    const ids = text.split(/,\s*/).filter((id, i, all) => id !== '' || i === all.length - 1)
    return text.trim() === ''
      ? removeAt(document, '/cameras')
      : setAt(
          document,
          '/cameras',
          ids.map((id) => ({ id })),
        )
  },
})

export function crewFields(document: ShootDocument): readonly DocumentField[] {
  const people = peopleOf(document).flatMap((person, i) => [
    plain(`person-${i}`, personWords(i + 1), `/people/${i}/id`),
    listed(`roles-${i}`, rolesOf(asText(person?.id) || `person ${i + 1}`), `/people/${i}/roles`, rolesWhy),
  ])
  return [...people, camerasField]
}

export function addPerson(document: ShootDocument): ShootDocument {
  const people = peopleOf(document)
  const free = Array.from({ length: 41 }, (_, i) => `person-${i + 1}`).find((id) => !people.some((p) => p.id === id))
  return setAt(document, '/people', [...people, { id: free, roles: ['camera'] }])
}
