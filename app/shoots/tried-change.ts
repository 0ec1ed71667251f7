import { whatIf } from '@/lib/day/what-if'
import type { DayChange } from '@/lib/plan/day-changes'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import type { Problem, Result } from '@/lib/refusals'
import { forecastsBehind, layoutOf } from '../worked-out'
import type { WhatIfAnswer } from './what-ifs'

/** A day that cannot be laid out is told by its problems. */
class NoDay extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems[0]?.sentence)
  }
}

/** One change of the day, cooked and laid out anew beside today's plan. */
export function triedChange(document: ShootDocument, shoot: Shoot, change: DayChange): Result<WhatIfAnswer> {
  const run = (of: Shoot) => {
    const laid = layoutOf(of)
    if (!laid.ok) throw new NoDay(laid.problems)
    return { layout: laid.layout, forecasts: forecastsBehind(of, laid.layout) }
  }
  try {
    const { title, lines, day, document: changed } = whatIf({ document, shoot, ...run(shoot) }, change, run)
    return { ok: true, value: { title, lines, document: day ? changed : null } }
  } catch (fault) {
    if (fault instanceof NoDay) return { ok: false, problems: fault.problems }
    throw fault
  }
}
