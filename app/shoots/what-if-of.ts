import 'server-only'
import { BorderError } from '@/lib/data/border-error'
import { type DayChange, worseWeather } from '@/lib/plan/day-changes'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import { changeBeside } from '../day-pool'
import { thisIsNoChange } from '../words/what-ifs'
import { WHAT_IFS, type WhatIfAnswer, type WhatIfId } from './what-ifs'

const HELD = '30 min'
const CHANGES: Readonly<Record<WhatIfId, (shoot: Shoot) => DayChange>> = {
  'late-15': () => ({ kind: 'crew-late', minutes: 15 }),
  'late-30': () => ({ kind: 'crew-late', minutes: 30 }),
  'late-60': () => ({ kind: 'crew-late', minutes: 60 }),
  colder: (shoot) => worseWeather(shoot, { colderK: 8 }),
  windier: (shoot) => worseWeather(shoot, { windierMpS: 5 }),
  'rain-light': () => ({ kind: 'weather', rain: 'light' }),
  'rain-heavy': () => ({ kind: 'weather', rain: 'heavy' }),
  'hold-cooker': () => ({ kind: 'hold', in: 'cooker', for: HELD }),
  'hold-oven': () => ({ kind: 'hold', in: 'oven', for: HELD }),
  'hold-box': () => ({ kind: 'hold', in: 'box', for: HELD }),
}

function changeOf(asked: unknown, shoot: Shoot): DayChange {
  const known = WHAT_IFS.find(([id]) => id === asked)
  if (known) return CHANGES[known[0]](shoot)
  const sentence = thisIsNoChange(WHAT_IFS.map(([id]) => id).join(', '))
  throw new BorderError('invalid', { problems: [{ pointer: '/change', sentence }], sentence })
}

/** One change of the day, beside today's plan. */
export async function whatIfOf(document: ShootDocument, shoot: Shoot, asked: unknown): Promise<WhatIfAnswer> {
  const tried = await changeBeside(document, shoot, changeOf(asked, shoot))
  if (!tried.ok) throw new BorderError('invalid', { problems: tried.problems })
  return tried.value
}
