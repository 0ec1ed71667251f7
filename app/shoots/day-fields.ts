import { typedClock } from '@/lib/plan/as-read'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { LIGHTS } from '@/lib/plan/vocabulary'
import {
  crewCall,
  everybodyEatsWithinH,
  firstSlice,
  howFarPastThatWrap,
  howSureSliceMust,
  leastBetweenReleaseAndNext,
  lengthOfMeal,
  nextDaysCall,
  overtimeAtMost,
  restBetweenTwoDays,
  suchAsMeatThenGoes,
  timeSuchAsEachPersons,
  timeSuchAsEmpty,
  timeSuchAsOrGolden,
  timeSuchAsWhatDoes,
  wrapNoLater,
} from '../words/day'
import { asText, type DocumentField, optional, timeOfDay } from './document-fields'

const sliceField: DocumentField = {
  key: 'slice',
  label: firstSlice,
  why: timeSuchAsOrGolden,
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
const chanceField = optional('chance', howSureSliceMust, '/day/slice/chance', {
  why: suchAsMeatThenGoes,
})

/** When it is sliced, when people are called, how long they may be kept, and when they eat. */
export function dayFields(document: ShootDocument): readonly DocumentField[] {
  const wished = valueAt(document, '/day/slice') !== undefined
  return [
    sliceField,
    ...(wished ? [chanceField] : []),
    timeOfDay('call', crewCall, '/day/call', {
      why: timeSuchAsEmpty,
    }),
    timeOfDay('wrap', wrapNoLater, '/day/wrap', {
      why: timeSuchAsWhatDoes,
    }),
    optional('overtime', overtimeAtMost, '/day/overtime', {
      why: howFarPastThatWrap,
    }),
    timeOfDay('next-call', nextDaysCall, '/day/nextCall', {
      why: timeSuchAsEachPersons,
    }),
    optional('turnaround', restBetweenTwoDays, '/day/turnaround', {
      why: leastBetweenReleaseAndNext,
    }),
    optional('meal', lengthOfMeal, '/day/meal', {
      why: everybodyEatsWithinH,
    }),
  ]
}
