import type { MomentId } from '../model/moment-ids'
import type { CookTimes } from './cook-times'
import { probeCrossing } from './probe-crossing'
import { RULES } from './rules'
import { safeLow, sorted } from './samples'

/** What tells a crew to come; minutes after meat-on where it is the clock. */
export type CallRule =
  | { readonly by: 'clock'; readonly standby: number }
  | { readonly by: 'follows'; readonly moment: MomentId; readonly afterMin: number }
  | { readonly by: 'trigger'; readonly probe: number }

/** Minutes that must lie between the call and the moment. By the clock nobody needs releasing: the sheet said when. */
export interface Lead {
  readonly release: number
  readonly setup: number
  readonly before: number
}
/** `grace`: minutes of standing about that a simpler rule may cost. */
type Candidate = { readonly rule: CallRule; readonly wait: number; readonly grace: number }

/**
 * The rule that keeps the lead in all but `RULES.missShare` of the members with the least standing about.
 * Of two that cost about the same the simpler one: the clock, then an earlier moment, then the probe.
 */
export function chooseRule(cook: CookTimes, moment: MomentId, lead: Lead): CallRule | null {
  const candidates = [byClock(cook, moment, lead), byEarlierMoment(cook, moment, lead), byProbe(cook, moment, lead)]
  const found = candidates.filter((c): c is Candidate => c !== null)
  const least = Math.min(...found.map((c) => c.wait))
  const simplest = found.find((c) => c.wait <= least + c.grace)
  return simplest?.rule ?? null
}

function byClock(cook: CookTimes, moment: MomentId, lead: Lead): Candidate | null {
  const times = cook.sorted(moment)
  if (!times) return null
  const safe = safeLow(times, RULES.missShare)
  if (!Number.isFinite(safe)) return null
  return { rule: { by: 'clock', standby: safe - lead.setup - lead.before }, wait: meanFinite(times) - safe, grace: 2 }
}

function byEarlierMoment(cook: CookTimes, moment: MomentId, lead: Lead): Candidate | null {
  const needed = lead.release + lead.setup + lead.before
  const found = cook.moments
    .filter((m) => m !== moment && m !== 'carryover-peak')
    .flatMap((m): Candidate[] => {
      const gaps = gapsBetween(cook, m, moment)
      const afterMin = Math.floor(safeLow(gaps, RULES.missShare) - needed + 1e-6)
      if (!(afterMin >= 0) || !Number.isFinite(afterMin)) return []
      return [{ rule: { by: 'follows', moment: m, afterMin }, wait: meanFinite(gaps) - needed - afterMin, grace: 1 }]
    })
  return found.reduce<Candidate | null>((best, c) => (best && best.wait <= c.wait ? best : c), null)
}

/** Sorted minutes from one moment to the other; a later moment that never comes is never missed. */
function gapsBetween(cook: CookTimes, from: MomentId, to: MomentId) {
  const [a, b] = [cook.at(from), cook.at(to)]
  if (!a || !b) return Float64Array.of(Number.NEGATIVE_INFINITY)
  return sorted(b.map((t, m) => (Number.isFinite(t) ? t - (a[m] as number) : Number.POSITIVE_INFINITY)))
}

/** The highest whole or half degree that still leaves the lead. */
function byProbe(cook: CookTimes, moment: MomentId, lead: Lead): Candidate | null {
  const times = cook.at(moment)
  if (!times) return null
  const needed = lead.release + lead.setup + lead.before
  const gapsAt = (probe: number) => {
    const crossed = probeCrossing(cook, probe)
    return sorted(times.map((t, m) => (Number.isFinite(t) ? t - (crossed[m] as number) : Number.POSITIVE_INFINITY)))
  }
  const keeps = (probe: number) => safeLow(gapsAt(probe), RULES.missShare) >= needed
  let [low, high] = [0, 220]
  if (!keeps(low / 2)) return null
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (keeps(middle / 2)) low = middle
    else high = middle
  }
  return { rule: { by: 'trigger', probe: low / 2 }, wait: meanFinite(gapsAt(low / 2)) - needed, grace: 0 }
}

function meanFinite(values: Float64Array): number {
  const finite = values.filter((v) => Number.isFinite(v))
  return finite.reduce((sum, v) => sum + v, 0) / Math.max(1, finite.length)
}

/** When a rule speaks in each member, minutes after meat-on. */
export function ruleTimes(cook: CookTimes, rule: CallRule): Float64Array {
  if (rule.by === 'clock') return new Float64Array(cook.members).fill(rule.standby)
  if (rule.by === 'trigger') return probeCrossing(cook, rule.probe)
  const from = cook.at(rule.moment)
  return from ? from.map((t) => t + rule.afterMin) : new Float64Array(cook.members).fill(Number.POSITIVE_INFINITY)
}
