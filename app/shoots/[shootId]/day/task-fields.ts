import { typedClock } from '@/lib/plan/as-read'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import {
  endOf,
  everyWords,
  fromWords,
  intervalOf,
  lengthOf,
  lid,
  needsWords,
  notBefore,
  peopleOf,
  startOf,
  takesWords,
  taskDelayWhy,
  taskEveryWhy,
  taskFromWhy,
  taskLidWhy,
  taskNeedsWhy,
  taskTakesWhy,
  titleOfTask,
  toWords,
} from '../../../words/day'
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
      return setAt(document, pointer, named ? named[0] : typedClock(text))
    },
  })
}

export function taskCells(document: ShootDocument, index: number): TaskCells {
  const at = `/tasks/${index}`
  const name = asText(valueAt(document, `${at}/title`)) || `task ${index + 1}`
  const moments = momentChoices(document, at)
  return {
    title: plain(`${at}-c-title`, titleOfTask(index + 1), `${at}/title`),
    from: edge(`${at}-c-from`, startOf(name), `${at}/from`, moments),
    to: edge(`${at}-c-to`, endOf(name), `${at}/to`, moments),
    takes: optional(`${at}-c-takes`, lengthOf(name), `${at}/takes`),
    every: optional(`${at}-c-every`, intervalOf(name), `${at}/every`),
    people: listed(`${at}-c-needs`, peopleOf(name), `${at}/needs`),
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
    edge(`${at}-from`, fromWords, `${at}/from`, moments, taskFromWhy),
    edge(`${at}-to`, toWords, `${at}/to`, moments),
    optional(`${at}-takes`, takesWords, `${at}/takes`, {
      why: taskTakesWhy,
    }),
    optional(`${at}-every`, everyWords, `${at}/every`, { why: taskEveryWhy }),
    listed(`${at}-needs`, needsWords, `${at}/needs`, taskNeedsWhy),
    optional(`${at}-delay`, notBefore, `${at}/delay`, { why: taskDelayWhy }),
    lidField(at),
    ...cookField(document, at),
  ]
}

const lidField = (at: string): DocumentField => ({
  key: `${at}-lid`,
  label: lid,
  why: taskLidWhy,
  pointers: [`${at}/lid`],
  options: [
    ['', 'stays as it is'],
    ['open', 'is off for it'],
  ],
  read: (document) => asText(valueAt(document, `${at}/lid`)),
  write: (document, text) => (text === '' ? removeAt(document, `${at}/lid`) : setAt(document, `${at}/lid`, text)),
})
