import type { Draft } from './draft'
import type { DayProblem } from './problem'
import { listed, quoted } from './words'

type Day = { readonly problem: DayProblem; readonly draft: Draft }

/** What a change that saves a shot costs beside the day as it stands, in words; undefined where it costs nothing. */
export function savingPrice(now: Day, changed: Day): string | undefined {
  const more = (of: 'people' | 'cameras') => changed.problem.crew[of].length - now.problem.crew[of].length
  const parts = [
    ...added(more('people'), 'person', hoursOf(changed.draft)),
    ...added(more('cameras'), 'camera', 0),
    ...longer(now, changed),
    ...givesWay(now, changed),
  ]
  return parts.length > 0 ? `It costs ${listed(parts)}.` : undefined
}

const hoursOf = ({ wrap, crewCall }: Draft) => Math.round((wrap - crewCall) / 60)
const added = (count: number, what: string, hours: number) =>
  count > 0 ? [`one more ${what}${hours > 0 ? ` for ${hours} h` : ''}`] : []

/** A day that is longer by less is no longer day. */
const LONGER_MIN = 15
function longer(now: Day, changed: Day): string[] {
  const minutes = changed.draft.wrap - changed.draft.crewCall - (now.draft.wrap - now.draft.crewCall)
  const people = now.problem.crew.people.length
  return minutes < LONGER_MIN
    ? []
    : [`${Math.round(minutes)} min more of ${people === 1 ? 'one person' : `${people} people`}`]
}

function givesWay(now: Day, changed: Day): string[] {
  const placed = ({ problem, draft }: Day) =>
    [...problem.moments.filter((_, i) => draft.moments[i]), ...problem.floats.filter((_, i) => draft.floats[i])].map(
      ({ shot }) => shot,
    )
  const still = new Set(placed(changed).map(({ id }) => id))
  return placed(now)
    .filter(({ id }) => !still.has(id))
    .map(({ title }) => quoted(title))
}
