/** Member histories on one time axis. */
import type { CookPlan } from './cook'
import { warmingC } from './cooker'
import type { Course } from './course'
import type { Fire } from './fire'
import type { Trace } from './forecast'
import { type Run, SAMPLE_S } from './simulate'
import type { Member } from './spread'

/** All members on one axis: the cooker warming before meat-on, each member's last value standing once it has ended. */
export function traceOf(
  plan: CookPlan,
  course: Course,
  runs: readonly Run[],
  drawn: readonly Member[],
  fires: readonly Fire[],
): Trace {
  const before = Math.ceil(-fires.reduce((first, fire) => Math.min(first, fire.litS), 0) / SAMPLE_S)
  const after = runs.reduce((most, run) => Math.max(most, run.trace.coreC.length), 0)
  const count = before + after
  const row = () => new Float32Array(count * runs.length)
  const trace = {
    startS: -before * SAMPLE_S,
    stepS: SAMPLE_S,
    count,
    cookerC: row(),
    surfaceC: row(),
    coreC: row(),
    probeC: row(),
  }
  runs.forEach((run, m) => {
    const fire = fires[m] as Fire
    const at = m * count
    for (let i = 0; i < before; i++) {
      const sinceLitS = (i - before) * SAMPLE_S - fire.litS
      trace.cookerC[at + i] = warmingC(plan.surroundings.air, course.preheatC, fire.warmUpS, sinceLitS)
    }
    const startC = (drawn[m] as Member).startC
    for (const column of ['surfaceC', 'coreC', 'probeC'] as const) trace[column].fill(startC, at, at + before)
    for (const column of ['cookerC', 'surfaceC', 'coreC', 'probeC'] as const) {
      trace[column].set(run.trace[column], at + before)
      trace[column].fill(run.trace[column].at(-1) ?? startC, at + before + run.trace[column].length, at + count)
    }
  })
  return trace
}
