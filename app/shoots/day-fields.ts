import { typedClock } from '@/lib/plan/as-read'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { LIGHTS } from '@/lib/plan/vocabulary'
import * as words from '../words/plan'
import { asText, type DocumentField, optional, timeOfDay } from './document-fields'

const sliceField: DocumentField = {
  key: 'slice',
  label: words.slice,
  why: words.sliceAt,
  pointers: ['/day/slice/at', '/day/slice/in'],
  suggestions: [words.goldenHour, words.daylight, '18:30'],
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
const chanceField = optional('chance', words.chance, '/day/slice/chance', {
  why: words.chanceWhy,
})

/** When it is sliced, when people are called, how long they may be kept, and when they eat. */
export function dayFields(document: ShootDocument): readonly DocumentField[] {
  const wished = valueAt(document, '/day/slice') !== undefined
  return [
    sliceField,
    ...(wished ? [chanceField] : []),
    timeOfDay('call', words.call, '/day/call', { why: words.callWhy }),
    timeOfDay('wrap', words.wrap, '/day/wrap', { why: words.wrapWhy }),
    optional('overtime', words.overtime, '/day/overtime', { why: words.overtimeWhy }),
    timeOfDay('next-call', words.nextCall, '/day/nextCall', { why: words.nextCallWhy }),
    optional('turnaround', words.turnaround, '/day/turnaround', { why: words.turnaroundWhy }),
    optional('meal', words.meal, '/day/meal', { why: words.mealWhy }),
  ]
}
