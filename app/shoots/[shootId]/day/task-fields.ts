import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { asText, type DocumentField, optional, plain } from '../../document-fields'
import { type MomentChoice, momentChoices } from './moment-choices'
import { cookField, listed } from './shot-fields'

/** The columns of the tasks' table; the rest of a task is under "More". */
export const TASK_COLUMNS = ['from', 'to', 'takes', 'every', 'people'] as const
type Column = (typeof TASK_COLUMNS)[number]
export type TaskCells = { readonly title: DocumentField } & Readonly<Record<Column, DocumentField>>

/** A moment by its name or a time of day: "fire lit", "18:30". */
function edge(key: string, label: string, pointer: string, moments: readonly MomentChoice[], why?: string) {
  return plain(key, label, pointer, {
    why,
    suggestions: moments.map(([, words]) => words),
    read: (document) => {
      const written = asText(valueAt(document, pointer))
      return moments.find(([id]) => id === written)?.[1] ?? written
    },
    write: (document, text) => {
      const named = moments.find(([, words]) => words === text.trim().toLowerCase())
      return setAt(document, pointer, named ? named[0] : text)
    },
  })
}

export function taskCells(document: ShootDocument, index: number): TaskCells {
  const at = `/tasks/${index}`
  const name = asText(valueAt(document, `${at}/title`)) || `task ${index + 1}`
  const moments = momentChoices(document, at)
  return {
    title: plain(`${at}-c-title`, `Title of task ${index + 1}`, `${at}/title`),
    from: edge(`${at}-c-from`, `Begin of ${name}`, `${at}/from`, moments),
    to: edge(`${at}-c-to`, `End of ${name}`, `${at}/to`, moments),
    takes: optional(`${at}-c-takes`, `Length of ${name}`, `${at}/takes`),
    every: optional(`${at}-c-every`, `Interval of ${name}`, `${at}/every`),
    people: listed(`${at}-c-needs`, `People of ${name}`, `${at}/needs`),
  }
}

/** What stands in the table where it is wide enough for its columns. */
const IN_TABLE = ['from', 'to', 'takes', 'every', 'needs']
export const isTaskColumn = ({ key }: DocumentField) => IN_TABLE.some((name) => key.endsWith(`-${name}`))

/** All that a task says but its title. */
export function taskFields(document: ShootDocument, index: number): readonly DocumentField[] {
  const at = `/tasks/${index}`
  const moments = momentChoices(document, at)
  return [
    edge(`${at}-from`, 'From', `${at}/from`, moments, 'A moment such as “meat on”, or a time such as 18:30.'),
    edge(`${at}-to`, 'To', `${at}/to`, moments),
    optional(`${at}-takes`, 'Takes', `${at}/takes`, {
      why: 'So long, once in between: 10 min. Empty: the whole time from one to the other.',
    }),
    optional(`${at}-every`, 'Every', `${at}/every`, { why: 'Again and again, so far apart: 45 min. Empty: once.' }),
    listed(`${at}-needs`, 'Needs', `${at}/needs`, 'Roles or people, with commas: cook, camera.'),
    optional(`${at}-delay`, 'Not before', `${at}/delay`, { why: 'So long after “from”: 30 min. Empty: at once.' }),
    lidField(at),
    ...cookField(document, at),
  ]
}

const lidField = (at: string): DocumentField => ({
  key: `${at}-lid`,
  label: 'Lid',
  why: 'With the lid off the cook loses heat; the forecast then knows of it.',
  pointers: [`${at}/lid`],
  options: [
    ['', 'stays as it is'],
    ['open', 'is off for it'],
  ],
  read: (document) => asText(valueAt(document, `${at}/lid`)),
  write: (document, text) => (text === '' ? removeAt(document, `${at}/lid`) : setAt(document, `${at}/lid`, text)),
})
