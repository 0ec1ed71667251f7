import type { DayState } from '../log/day-state'
import { markKey } from '../log/mark-key'
import type { MomentId } from '../model/moment-ids'
import { momentName, momentsOf } from '../plan/moments'
import type { Cook, Shoot } from '../plan/shoot'
import { type Instant, type Seconds, seconds } from '../units'
import { peakRead } from './peak'
import { takesWords } from './takes'
import { type Morning, type Span, spanOf, type ToldForecast } from './told'

/** A moment as it was foreseen and as it came. */
export interface MomentRow {
  readonly cook: string
  readonly moment: MomentId
  readonly name: string
  readonly happened: Instant | null
  readonly morning: Span
  /** What the board said then, of what was still ahead. */
  readonly board: Span | null
  /** How much later than likely it came; earlier is negative. */
  readonly offMorning: Seconds | null
  readonly offBoard: Seconds | null
  /** Of this morning's window. */
  readonly fell: 'inside' | 'before' | 'after' | null
  readonly takes: string
  /** There is a good take of it. */
  readonly onCamera: boolean
}
export interface MomentsInput {
  readonly shoot: Pick<Shoot, 'cooks' | 'shots'>
  readonly day: DayState
  readonly morning: Morning
  readonly board: ToldForecast | null
  /** Why shots were missed. */
  readonly why: ReadonlyMap<string, string>
}

const NEVER: Span = { early: null, likely: null, late: null }

export const momentRows = (input: MomentsInput): readonly MomentRow[] =>
  input.shoot.cooks.flatMap((cook) => momentsOf(cook).map((moment) => rowOf(input, cook, moment)))

function rowOf({ shoot, day, morning, board, why }: MomentsInput, cook: Cook, moment: MomentId): MomentRow {
  const happened = happenedAt(day, cook.id, moment)
  const planned = morning[cook.id]?.[moment] ?? NEVER
  const told = board?.forecast.expected.find((one) => one.cook === cook.id && one.moment === moment)
  const ahead = told && told.sd > 0 && (happened === null || happened > (board?.at ?? 0)) ? spanOf(told) : null
  const shots = (shoot.shots ?? []).filter(
    ({ at, cook: of }) => at?.moment === moment && (of ?? shoot.cooks[0]?.id) === cook.id,
  )
  const ids = shots.map(({ id }) => id)
  return {
    cook: cook.id,
    moment,
    name: momentName(moment, cook.cooker.kind),
    happened,
    morning: planned,
    board: ahead,
    offMorning: between(planned.likely, happened),
    offBoard: between(ahead?.likely ?? null, happened),
    fell: fellIn(planned, happened),
    takes: takesWords(ids, day, why),
    onCamera: day.takes.some(({ shot, verdict }) => shot !== null && ids.includes(shot) && verdict === 'good'),
  }
}

/** As marked; nobody marks the peak, which is seen in the readings only. */
export const happenedAt = (day: DayState, cook: string, moment: MomentId): Instant | null =>
  day.marks[markKey(cook, moment)]?.at ?? (moment === 'carryover-peak' ? peakRead(day, cook) : null)

const between = (from: Instant | null, to: Instant | null): Seconds | null =>
  from === null || to === null ? null : seconds((to - from) / 1000)

/** A window without a late end never ends. A moment is a minute: the clock shows no less. */
const MINUTE_MS = 60_000
/** What the crew sets by the clock has a time and no window. */
export const isSet = ({ early, late }: Pick<Span, 'early' | 'late'>) => early !== null && early === late
function fellIn({ early, late }: Span, happened: Instant | null): MomentRow['fell'] {
  if (happened === null || early === null || isSet({ early, late })) return null
  if (happened < early - MINUTE_MS) return 'before'
  return late !== null && happened > late + MINUTE_MS ? 'after' : 'inside'
}
