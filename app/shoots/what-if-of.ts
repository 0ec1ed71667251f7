import 'server-only'
import { BorderError } from '@/lib/data/border-error'
import { whatIf } from '@/lib/day/what-if'
import { type DayChange, worseWeather } from '@/lib/plan/day-changes'
import { problemsForLayout } from '@/lib/plan/parse'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import { forecastsBehind, layoutOf } from '../workbench'
import { WHAT_IFS, type WhatIfAnswer, type WhatIfId } from './what-ifs'

const HELD = '30 min'
const CHANGES: Readonly<Record<WhatIfId, (shoot: Shoot) => DayChange>> = {
  'late-15': () => ({ kind: 'crew-late', minutes: 15 }),
  'late-30': () => ({ kind: 'crew-late', minutes: 30 }),
  'late-60': () => ({ kind: 'crew-late', minutes: 60 }),
  colder: (shoot) => worseWeather(shoot, { colderK: 8 }),
  windier: (shoot) => worseWeather(shoot, { windierMpS: 5 }),
  'hold-cooker': () => ({ kind: 'hold', in: 'cooker', for: HELD }),
  'hold-oven': () => ({ kind: 'hold', in: 'oven', for: HELD }),
  'hold-box': () => ({ kind: 'hold', in: 'box', for: HELD }),
}

function changeOf(asked: unknown, shoot: Shoot): DayChange {
  const known = WHAT_IFS.find(([id]) => id === asked)
  if (known) return CHANGES[known[0]](shoot)
  const sentence = `This is no change that can be weighed. Write one of ${WHAT_IFS.map(([id]) => id).join(', ')}.`
  throw new BorderError('invalid', { problems: [{ pointer: '/change', sentence }], sentence })
}

/** One change of the day, beside today's plan. */
export function whatIfOf(document: ShootDocument, shoot: Shoot, asked: unknown): WhatIfAnswer {
  const change = changeOf(asked, shoot)
  const problems = problemsForLayout(shoot)
  if (problems.length > 0) throw new BorderError('invalid', { problems })
  const run = (of: Shoot) => {
    const laid = layoutOf(of)
    if (!laid.ok) throw new BorderError('invalid', { problems: laid.problems })
    return { layout: laid.layout, forecasts: forecastsBehind(of, laid.layout) }
  }
  const tried = whatIf({ document, shoot, ...run(shoot) }, change, run)
  return { title: tried.title, lines: tried.lines, document: tried.day ? tried.document : null }
}
