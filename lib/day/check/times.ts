import type { Facts } from './facts'
import { type Violation, violation } from './violation'

const ISO = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})$/

/** Every time is ISO 8601 with the zone's own offset, and what starts ends later. */
export function checkTimes(facts: Facts): Violation[] {
  return [...everyTime(facts).flatMap((t) => checkText(facts, t)), ...checkOrder(facts)]
}

type Stated = { readonly where: string; readonly text: string; readonly shots: readonly string[] }

function everyTime({ layout, titleOf }: Facts): Stated[] {
  const of = (where: string, shots: readonly string[], ...texts: (string | null)[]): Stated[] =>
    texts.flatMap((text) => (text === null ? [] : [{ where, text, shots }]))
  return [
    ...of('The start', [], layout.start),
    ...of('The crew call', [], layout.crewCall),
    ...of('Wrap', [], layout.wrap),
    ...Object.entries(layout.meatOn).flatMap(([cook, text]) => of(`Meat-on of "${cook}"`, [], text)),
    ...layout.shots.flatMap((s) => of(titleOf(s.id), [s.id], s.setupStart, s.start, s.end)),
    ...layout.calls.flatMap(({ id, for: shot, standby, window }) =>
      of(`Call "${id}"`, [shot], standby, window.early, window.likely, window.late),
    ),
    ...layout.tasks.flatMap((t) => of(`Task "${t.id}"`, [], t.start, t.end)),
    ...layout.meals.flatMap((m) => of('A meal', [], m.start, m.end)),
  ]
}

function checkText({ clock, shoot }: Facts, { where, text, shots }: Stated): Violation[] {
  const ms = Date.parse(text)
  if (!ISO.test(text) || Number.isNaN(ms))
    return [
      violation(
        'time-malformed',
        `${where}: "${text}" is not a time with its offset, such as "2027-05-15T14:00+01:00".`,
        shots,
      ),
    ]
  const zone = clock.offsetMs(ms)
  if (zone === offsetIn(text)) return []
  return [
    violation('time-offset', `${where}: "${text}" does not carry the offset of ${shoot.zone} at that time.`, shots),
  ]
}

function offsetIn(text: string): number {
  const found = /([+-])(\d{2}):(\d{2})$/.exec(text)
  if (!found) return 0
  const size = (Number(found[2]) * 60 + Number(found[3])) * 60_000
  return found[1] === '-' ? -size : size
}

function checkOrder({ booked, duties, meals, crewCall, wrap, titleOf }: Facts): Violation[] {
  const found: Violation[] = []
  for (const b of booked)
    if (b.setup > b.start || b.start >= b.end)
      found.push(violation('time-order', `${titleOf(b.id)} does not run setup, start, end in that order.`, [b.id]))
  for (const d of duties)
    if (d.start > d.end) found.push(violation('time-order', `Task "${d.id}" ends before it starts.`, [], d.people))
  for (const m of meals)
    if (m.start >= m.end) found.push(violation('time-order', 'A meal ends before it starts.', [], m.people))
  if (crewCall >= wrap) found.push(violation('time-order', 'The day wraps before the crew is called.'))
  return found
}
