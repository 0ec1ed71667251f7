import type { MomentId } from '../model/moment-ids'
import { laterWords, whyMoved } from '../model/why-moved'
import { momentName } from '../plan/moments'
import { type Instant, seconds } from '../units'
import { type CookNow, plannedAt } from './live-cook'
import type { Expected, LiveForecast } from './session'

/** Less than this is as planned. */
const WORTH_MS = 60_000
/** What a cook is told by: the first of these that is still to come. */
const HEADS: readonly MomentId[] = ['off-heat', 'first-slice']

/** Why a cook's forecast is not the plan's, and what it comes to: "The cooker runs 11 °C under its dial: off the heat about 14 min later than planned." */
export function reasonOf(cook: CookNow, before: LiveForecast | null, now: Instant): string {
  const head = HEADS.map((moment) => at(cook.expected, moment)).find((one) => one && one.likely > now)
  if (!head) return `${capital(lastWords(cook))}.`
  const planned = plannedAt(cook, head.moment)
  const byMs = planned === null ? 0 : head.likely - planned
  const where = momentName(head.moment, cook.cook.cooker.kind)
  const moved = Math.abs(byMs) >= WORTH_MS
  const outcome = moved ? `${where} about ${laterWords(seconds(byMs / 1000))} than planned` : `${where} as planned`
  const cause = causeOf(cook, before, byMs)
  return cause ? `${cause}: ${outcome}.` : `${capital(outcome)}.`
}

/** By how much the cook has moved since the forecast before, ms; 0 where there was none. */
export function movedMs({ expected }: CookNow, before: LiveForecast | null): number {
  const pairs = expected.flatMap(({ cook, moment, likely }) => {
    const last = before?.expected.find((one) => one.cook === cook && one.moment === moment)
    return last ? [Math.abs(likely - last.likely)] : []
  })
  return Math.max(0, ...pairs)
}

const at = (expected: readonly Expected[], moment: MomentId) => expected.find((one) => one.moment === moment)
const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

/** What somebody just marked comes first, then how late the meat went on, then what the readings say. */
function causeOf(cook: CookNow, before: LiveForecast | null, byMs: number): string | null {
  return justHappened(cook, before) ?? lateMeat(cook, byMs) ?? byReadings(cook, byMs)
}

function justHappened(cook: CookNow, before: LiveForecast | null): string | null {
  if (!before || !cook.given) return null
  for (const moment of ['pull', 'vents-open', 'sear-start', 'off-heat'] as const) {
    const happened = at(cook.expected, moment)
    const last = before.expected.find((one) => one.cook === cook.cook.id && one.moment === moment)
    if (cook.given.pastS[moment] === undefined || !happened || !last || last.sd === 0) continue
    return `${capital(momentName(moment, cook.cook.cooker.kind))} came ${offPlan(cook, happened)}`
  }
  return null
}
function offPlan(cook: CookNow, { moment, likely }: Expected): string {
  const planned = plannedAt(cook, moment)
  const byMs = planned === null ? 0 : likely - planned
  return Math.abs(byMs) < WORTH_MS ? 'as planned' : `${laterWords(seconds(byMs / 1000))} than planned`
}

/** Where it is most of what moved. */
function lateMeat({ seen, planned, cook }: CookNow, byMs: number): string | null {
  const lateMs = seen.meatOn - planned
  if (Math.abs(lateMs) < WORTH_MS || Math.abs(byMs - lateMs) > Math.abs(lateMs)) return null
  const words = capital(momentName('meat-on', cook.cooker.kind))
  return seen.begun ? `${words} ${laterWords(seconds(lateMs / 1000))} than planned` : `${words} is not marked yet`
}

/** The greatest cause that points the way the moment went. */
function byReadings({ plan, given, seen }: CookNow, byMs: number): string | null {
  if (!given) return null
  if (seen.readings.length === 0) return 'No reading yet'
  const reason = whyMoved(plan, given).reasons.find((one) => one.byS > 0 === byMs > 0)
  return Math.abs(byMs) < WORTH_MS ? 'The readings agree with the plan' : (reason?.cause ?? 'So the readings say')
}

function lastWords({ expected, cook }: CookNow): string {
  const last = expected.findLast(({ moment, sd }) => sd === 0 && moment !== 'carryover-peak')
  return last ? `${momentName(last.moment, cook.cooker.kind)} is over` : 'the cook is over'
}
