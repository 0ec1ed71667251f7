import type { MomentId } from '../model/moment-ids'
import type { CookTimes } from './cook-times'
import { probeCrossing } from './probe-crossing'
import { RULES } from './rules'
import { safeLow } from './samples'

/** What tells a crew to come; minutes after meat-on where it is the clock. */
export type CallRule =
  | { readonly by: 'clock'; readonly standby: number }
  | { readonly by: 'follows'; readonly moment: MomentId; readonly afterMin: number }
  | { readonly by: 'trigger'; readonly probe: number }

/** What must fit between the call and the moment, minutes. By the clock nobody needs releasing: the sheet said when. */
export interface Lead {
  readonly release: number
  readonly setup: number
  readonly before: number
  /**
   * By member, until when the whole crew stands at this place for an earlier moment, set up: called by then they only
   * re-frame. Absent where they come from elsewhere.
   */
  readonly held?: Float64Array
}
/** `wait`: minutes of standing ready; `grace`: how many more a simpler rule may cost. */
type Candidate = { readonly rule: CallRule; readonly wait: number; readonly grace: number }

/**
 * The rule that keeps the lead in all but `RULES.missShare` of the members with the least standing about.
 * Of two that cost about the same the simpler one: the clock, then an earlier moment, then the probe.
 */
export function chooseRule(cook: CookTimes, moment: MomentId, lead: Lead): CallRule | null {
  const times = cook.at(moment)
  if (!times) return null
  const candidates = [
    byClock(cook, moment, lead),
    byEarlierMoment(cook, moment, times, lead),
    byProbe(cook, times, lead),
  ]
  const found = candidates.filter((c): c is Candidate => c !== null)
  const least = Math.min(...found.map((c) => c.wait))
  return found.find((c) => c.wait <= least + c.grace)?.rule ?? null
}

function byClock(cook: CookTimes, moment: MomentId, lead: Lead): Candidate | null {
  const times = cook.sorted(moment)
  const safe = times ? safeLow(times, RULES.missShare) : Number.POSITIVE_INFINITY
  if (!times || !Number.isFinite(safe)) return null
  const finite = times.filter((t) => Number.isFinite(t))
  const wait = finite.reduce((sum, t) => sum + Math.max(0, t - safe), 0) / finite.length
  return { rule: { by: 'clock', standby: safe - lead.setup - lead.before - RULES.clockMarginMin }, wait, grace: 2 }
}

const MOST_AFTER_MIN = 600
function byEarlierMoment(cook: CookTimes, moment: MomentId, times: Float64Array, lead: Lead): Candidate | null {
  let best: Candidate | null = null
  for (const from of cook.moments) {
    if (from === moment || from === 'carryover-peak') continue
    const zero = cook.at(from) as Float64Array
    if (!inOrder(zero, times)) continue
    const called = (afterMin: number) => zero.map((t) => t + afterMin)
    const afterMin = highest(0, MOST_AFTER_MIN, (after) => keepsLead(times, called(after), lead))
    if (afterMin === null) continue
    const wait = meanWait(times, called(afterMin), lead)
    // Of two alike the later moment: it is nearer to what it calls for.
    if (!best || wait <= best.wait + 0.5) best = { rule: { by: 'follows', moment: from, afterMin }, wait, grace: 1 }
  }
  return best
}
const inOrder = (first: Float64Array, next: Float64Array) => first.every((t, m) => t <= (next[m] as number))

const HOTTEST_HALF_DEGREES = 220
/** The highest whole or half degree that still leaves the lead. */
function byProbe(cook: CookTimes, times: Float64Array, lead: Lead): Candidate | null {
  const half = highest(0, HOTTEST_HALF_DEGREES, (h) => keepsLead(times, probeCrossing(cook, h / 2), lead))
  if (half === null) return null
  const wait = meanWait(times, probeCrossing(cook, half / 2), lead)
  return { rule: { by: 'trigger', probe: half / 2 }, wait, grace: 0 }
}

/** The highest whole number for which a test that only ever turns from true to false still holds. */
function highest(low: number, high: number, holds: (n: number) => boolean): number | null {
  if (!holds(low)) return null
  let [yes, no] = [low, high + 1]
  while (no - yes > 1) {
    const middle = (yes + no) >> 1
    if (holds(middle)) yes = middle
    else no = middle
  }
  return yes
}

/** A call in the last moment before a crew leaves may miss it. */
const STILL_THERE_MIN = 0.25
/** When a member's crew stands ready. A later call never makes it sooner. */
function readyAt(called: number, lead: Lead, member: number): number {
  const held = lead.held?.[member] ?? Number.NEGATIVE_INFINITY
  return called <= held - STILL_THERE_MIN ? held + RULES.reframeMin : called + lead.release + lead.setup
}
/** A moment that never comes is never missed here. */
function keepsLead(times: Float64Array, called: Float64Array, lead: Lead): boolean {
  let short = 0
  for (let m = 0; m < times.length; m++) {
    const t = times[m] as number
    if (Number.isFinite(t) && readyAt(called[m] as number, lead, m) > t - lead.before + 1e-6) short++
  }
  return short <= Math.floor(RULES.missShare * times.length)
}
function meanWait(times: Float64Array, called: Float64Array, lead: Lead): number {
  let [sum, count] = [0, 0]
  for (let m = 0; m < times.length; m++) {
    const t = times[m] as number
    if (!Number.isFinite(t)) continue
    sum += Math.max(0, t - lead.before - readyAt(called[m] as number, lead, m))
    count++
  }
  return sum / Math.max(1, count)
}

/** When a rule speaks in each member, minutes after meat-on. */
export function ruleTimes(cook: CookTimes, rule: CallRule): Float64Array {
  if (rule.by === 'clock') return new Float64Array(cook.members).fill(rule.standby)
  if (rule.by === 'trigger') return probeCrossing(cook, rule.probe)
  const from = cook.at(rule.moment)
  return from ? from.map((t) => t + rule.afterMin) : new Float64Array(cook.members).fill(Number.POSITIVE_INFINITY)
}
