import type { Trouble as TroubleCode, Watched } from '../model/reading-watch'
import { type Instant, later, minutes } from '../units'
import type { Trouble } from './session'

/** How soon each wants doing, min. Common practice, no source. */
const WITHIN_MIN: Readonly<Record<TroubleCode, number>> = {
  'probe-out': 5,
  'probe-on-bone': 10,
  'lid-left-open': 2,
  'fire-dying': 10,
  'cooker-off-plan': 15,
  'thawing-core': 20,
  stall: 30,
}
/** What comes and goes with each reading is one trouble, until it has not shown for so long. [estimate] */
const GONE_AFTER_MIN: Readonly<Partial<Record<TroubleCode, number>>> = {
  'probe-on-bone': 5,
  'fire-dying': 10,
  'cooker-off-plan': 10,
  'thawing-core': 10,
  stall: 10,
}

/** The troubles of a cook now: those that last keep their id and deadline, new ones are named by the minute they came. */
export function troublesOf(
  cook: string,
  watched: readonly Watched[],
  before: readonly Trouble[],
  now: Instant,
): readonly Trouble[] {
  const own = before.filter((trouble) => trouble.cook === cook)
  const seen = watched.map(({ code, sentence, action }): Trouble => {
    const known = own.find((trouble) => trouble.code === code)
    return {
      id: known?.id ?? `${code}-${Math.floor(now / 60_000)}`,
      cook,
      code,
      sentence,
      action,
      deadline: known?.deadline ?? later(now, minutes(WITHIN_MIN[code])),
      seen: now,
    }
  })
  const lingering = own.filter(
    ({ code, seen: last }) =>
      code !== undefined &&
      last !== undefined &&
      !watched.some((one) => one.code === code) &&
      now < later(last, minutes(GONE_AFTER_MIN[code] ?? 0)),
  )
  return [...seen, ...lingering]
}
