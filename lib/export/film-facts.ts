import { type CookFacts, cookFacts, probeAt } from '../log/cook-facts'
import type { DayState } from '../log/day-state'
import { readingsOf } from '../log/for-forecast'
import { momentName } from '../plan/moments'
import type { Shoot } from '../plan/shoot'
import { type Celsius, celsius, type Instant, type Seconds, seconds } from '../units'

/** What pictures and captions tell of one cook, worked out once. Times are after meat-on. */
export interface FilmFacts {
  readonly cook: string
  readonly meatOn: Instant
  /** "went on", or "went in". */
  readonly went: string
  readonly marks: CookFacts['at']
  /** What the trusted probe read at each full minute; null where nobody knows. */
  readonly probeC: readonly (Celsius | null)[]
}

/** Null where nobody marked that the meat went on. */
export function filmFacts(shoot: Shoot, day: DayState, cook: string): FilmFacts | null {
  const facts = cookFacts(day, cook)
  const planned = shoot.cooks.find(({ id }) => id === cook)
  if (!facts || !planned) return null
  const readings = readingsOf(day, cook)
  const last = Math.max(0, facts.lastReading ?? 0, ...Object.values(facts.at))
  return {
    cook,
    meatOn: facts.meatOn,
    went: momentName('meat-on', planned.cooker.kind) === 'meat in' ? 'went in' : 'went on',
    marks: facts.at,
    probeC: Array.from({ length: Math.floor(last / 60) + 1 }, (_, minute) => probeAt(readings, seconds(60 * minute))),
  }
}

/** The cook that a camera shows at a time: that of its shot, else the first that went on. */
export function cookShown(shoot: Shoot, day: DayState, at: Instant, camera?: string): string | null {
  const take = day.takes.find(
    ({ from, to, camera: of }) =>
      (camera === undefined || of === camera) && from !== null && from <= at && at <= (to ?? from),
  )
  const own = shoot.shots?.find(({ id }) => id === take?.shot)?.cook
  return own ?? shoot.cooks.find(({ id }) => day.marks[`${id}/meat-on`])?.id ?? null
}

/** Straight between the full minutes. */
export function probeReads({ probeC }: FilmFacts, t: Seconds): Celsius | null {
  const minute = Math.floor(t / 60)
  const [before, after] = [probeC[minute], probeC[minute + 1]]
  if (before === null || before === undefined) return null
  if (after === null || after === undefined) return t === 60 * minute ? before : null
  return celsius(before + (t / 60 - minute) * (after - before))
}

/** In what state the food is, in a word; null before it went on. */
export function stateWord({ marks }: FilmFacts, t: Seconds): string | null {
  const since = (at: Seconds | undefined) => at !== undefined && t >= at
  if (t < 0) return null
  if (since(marks['first-slice'])) return 'sliced'
  if (since(marks['off-heat'])) return 'resting'
  return since(marks['sear-start']) ? 'searing' : 'cooking'
}
