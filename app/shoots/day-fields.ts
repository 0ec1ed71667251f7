import { typedClock } from '@/lib/plan/as-read'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { LIGHTS } from '@/lib/plan/vocabulary'
import { asText, type DocumentField, optional, timeOfDay } from './document-fields'

const sliceField: DocumentField = {
  key: 'slice',
  label: 'First slice at',
  why: 'A time such as 18:30, or "golden hour".',
  pointers: ['/day/slice/at', '/day/slice/in'],
  suggestions: ['golden hour', 'daylight', '18:30'],
  read: (document) => {
    const slice = valueAt(document, '/day/slice') as { at?: string; in?: string } | undefined
    return slice?.in ? slice.in.replaceAll('-', ' ') : asText(slice?.at)
  },
  write: (document, text) => {
    if (text.trim() === '') return removeAt(document, '/day/slice')
    const light = text.trim().toLowerCase().replaceAll(' ', '-')
    const known = LIGHTS.some((known) => known === light)
    const chance = valueAt(document, '/day/slice/chance')
    const sure = chance === undefined ? {} : { chance }
    return setAt(document, '/day/slice', { ...(known ? { in: light } : { at: typedClock(text.trim()) }), ...sure })
  },
}

/** Asked only where a slice is wished: a chance of nothing says nothing. */
const chanceField = optional('chance', 'How sure the slice must be', '/day/slice/chance', {
  why: 'Such as 80 %: the meat then goes on as late as that allows, and rests on until the time has come. Empty: it is sliced as soon as it may.',
})

/** When it is sliced, when people are called, how long they may be kept, and when they eat. */
export function dayFields(document: ShootDocument): readonly DocumentField[] {
  const wished = valueAt(document, '/day/slice') !== undefined
  return [
    sliceField,
    ...(wished ? [chanceField] : []),
    timeOfDay('call', 'Crew call, if it is fixed', '/day/call', {
      why: 'A time such as 14:00. Empty: as late as fits.',
    }),
    timeOfDay('wrap', 'Wrap no later than', '/day/wrap', {
      why: 'A time such as 22:30. What does not fit is dropped.',
    }),
    optional('overtime', 'Overtime, at most', '/day/overtime', {
      why: 'How far past that wrap the day may run to save a shot, at a price: 45 min. Empty: not at all.',
    }),
    timeOfDay('next-call', 'Next day’s call', '/day/nextCall', {
      why: 'A time such as 08:00. Each person’s rest until then is checked. Empty: nobody works the next day.',
    }),
    optional('turnaround', 'Rest between two days', '/day/turnaround', {
      why: 'The least between release and next call. Empty: 11 h.',
    }),
    optional('meal', 'Length of a meal', '/day/meal', {
      why: 'Everybody eats within 6 h of their call. Empty: 30 min.',
    }),
  ]
}
