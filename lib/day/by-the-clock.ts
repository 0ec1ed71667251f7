import type { MomentId } from '../model/moment-ids'
import type { Shoot, Shot } from '../plan/shoot'

/** The fire is lit and the meat goes on by the plan; all that comes of the cook from then on hangs on it. */
const PLANNED: readonly MomentId[] = ['fire-lit', 'meat-on']
const COOKED: readonly Shot['state'][] = ['hot', 'rested', 'sliced']

/** Whether people are told an hour for a shot, and not to come when the cook is so far. */
export function isByClock({ at, state, after }: Shot, shots: Shoot['shots']): boolean {
  if (at) return PLANNED.includes(at.moment)
  if (COOKED.includes(state)) return false
  return (shots ?? []).every((s) => !after?.includes(s.id) || isByClock(s, shots))
}
