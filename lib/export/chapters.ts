import type { DayState, Mark, Take } from '../log/day-state'
import { momentName } from '../plan/moments'
import type { Shoot, Shot } from '../plan/shoot'
import { type Instant, type Seconds, seconds } from '../units'
import { type EditClock, editClock } from './edit-clock'

export interface Chapter {
  readonly startS: Seconds
  readonly endS: Seconds
  readonly title: string
}

/** A shorter chapter nobody finds. Common practice, no source. */
const SHORTEST_S = 10

/**
 * What happens in the finished video, or since the first slate while no clip has its place in it (`editClock` says which):
 * a chapter for each moment that was marked and each shot that was taken. Empty where nothing was filmed.
 */
export function chaptersOf(shoot: Shoot, day: DayState): readonly Chapter[] {
  const clock = editClock(shoot, day)
  if (!clock) return []
  const starts = spaced(
    [...ofMarks(shoot, day, clock), ...ofTakes(shoot, day, clock)].sort((a, b) => a.startS - b.startS),
  )
  const first = starts[0]
  if (!first) return []
  const all =
    first.startS < SHORTEST_S ? [{ ...first, startS: seconds(0) }, ...starts.slice(1)] : [opening(shoot), ...starts]
  return all.map(({ startS, title }, i) => {
    const endS = all[i + 1]?.startS ?? seconds(Math.max(clock.ends, startS + SHORTEST_S))
    return { startS, endS, title }
  })
}

interface Start {
  readonly startS: Seconds
  readonly title: string
  readonly isMoment: boolean
}
/** A video begins at 0, and so does its first chapter. */
const opening = ({ title }: Shoot): Start => ({ startS: seconds(0), title, isMoment: false })

/** Of two that begin nearly at once the first counts, and a moment rather than a shot. */
function spaced(starts: readonly Start[]): Start[] {
  const kept: Start[] = []
  for (const one of starts) {
    const last = kept.at(-1)
    if (!last || one.startS - last.startS >= SHORTEST_S) kept.push(one)
    else if (one.isMoment && !last.isMoment) kept[kept.length - 1] = { ...one, startS: last.startS }
  }
  return kept
}

function ofMarks(shoot: Shoot, day: DayState, clock: EditClock): Start[] {
  const several = shoot.cooks.length > 1
  return Object.values(day.marks).flatMap((mark): Start[] => {
    const cook = shoot.cooks.find(({ id }) => id === mark.cook)
    const startS = clock.timeOf(beginning(mark, shoot, day))
    if (!cook || startS === null || mark.moment === 'carryover-peak') return []
    const name = momentName(mark.moment, cook.cooker.kind)
    return [
      {
        startS,
        title: `${name.charAt(0).toUpperCase()}${name.slice(1)}${several ? `, ${cook.id}` : ''}`,
        isMoment: true,
      },
    ]
  })
}

/** A moment that a take of its own shows begins with the take. */
function beginning(mark: Mark, { shots = [] }: Shoot, day: DayState): Instant {
  const own = day.takes.find(({ shot, from, to }) => {
    const planned = shots.find(({ id }) => id === shot)
    return planned && showsMark(planned, mark) && from !== null && from <= mark.at && mark.at <= (to ?? mark.at)
  })
  return own?.from ?? mark.at
}
const showsMark = (shot: Shot, mark: Mark) =>
  shot.at?.moment === mark.moment && (shot.cook === undefined || shot.cook === mark.cook)

/** The take of a shot that counts; a locked-off camera and a shot of a marked moment add nothing. */
function ofTakes({ shots = [] }: Shoot, day: DayState, clock: EditClock): Start[] {
  const marks = Object.values(day.marks)
  return shots.flatMap((shot): Start[] => {
    if (shot.locked || marks.some((mark) => showsMark(shot, mark))) return []
    const takes = day.takes.filter((take) => take.shot === shot.id && take.verdict !== 'no-good')
    const startS = bestFirst(takes)
      .flatMap(({ from, camera }) => (from === null ? [] : (clock.timeOf(from, camera) ?? [])))
      .at(0)
    return startS === undefined ? [] : [{ startS, title: shot.title, isMoment: false }]
  })
}
const bestFirst = (takes: readonly Take[]) =>
  [...takes].sort((a, b) => Number(b.verdict === 'good') - Number(a.verdict === 'good'))
