import type { DayForecast } from '../day-forecast'
import type { Call } from '../layout'
import { type Booked, type Facts, leadMs, rankAround } from './facts'
import { LIMITS } from './limits'
import { readyAfterCall } from './standing'
import { type Violation, violation } from './violation'

/** Every shot at a moment has one call, true to the forecast and early enough for its people. */
export function checkCalls(facts: Facts): Violation[] {
  const calls = facts.layout.calls.flatMap((call) => {
    const booked = facts.booked.find((b) => b.id === call.for)
    return booked ? [{ call, booked }] : []
  })
  return [
    ...checkPresence(facts),
    ...facts.layout.calls.flatMap((call) => checkOrder(call)),
    ...calls.flatMap(({ call, booked }) => RULES.flatMap((rule) => rule(facts, call, booked))),
  ]
}

function checkPresence({ booked, layout, titleOf }: Facts): Violation[] {
  return booked
    .filter((b) => b.shot.at && !layout.calls.some((c) => c.for === b.id))
    .map((b) => violation('call-missing', `Nothing calls the crew to ${titleOf(b.id)}.`, [b.id], b.people))
}

function checkOrder({ id, for: shot, window }: Call): Violation[] {
  const at = (text: string | null) => (text === null ? Number.POSITIVE_INFINITY : Date.parse(text))
  const [early, likely, late] = [at(window.early), at(window.likely), at(window.late)]
  if (!(early > likely || likely > late)) return []
  return [violation('call-window-order', `The window of call "${id}" does not run early, likely, late.`, [shot])]
}

type CallRule = (facts: Facts, call: Call, b: Booked) => Violation[]
const RULES: readonly CallRule[] = [
  checkMoment,
  checkPeople,
  checkWindow,
  checkStandby,
  checkTriggerCook,
  checkTriggerProbe,
  checkTriggerHot,
  checkTriggerLead,
  checkFollows,
]

function checkMoment({ titleOf }: Facts, call: Call, b: Booked): Violation[] {
  if (!b.shot.at || (call.moment === b.shot.at.moment && call.cook === b.cook)) return []
  return [
    violation(
      'call-moment',
      `Call "${call.id}" is for ${call.moment} of "${call.cook}"; ${titleOf(b.id)} stands at ${b.shot.at.moment} of "${b.cook}".`,
      [b.id],
    ),
  ]
}

function checkPeople({ titleOf }: Facts, call: Call, b: Booked): Violation[] {
  const once = (here: readonly string[], there: readonly string[]) => here.filter((p) => !there.includes(p))
  const differ = [...once(call.people, b.people), ...once(b.people, call.people)]
  if (differ.length === 0) return []
  return [
    violation(
      'call-people',
      `Call "${call.id}" and ${titleOf(b.id)} do not name the same people: ${differ.join(', ')}.`,
      [b.id],
      differ,
    ),
  ]
}

const samplesOf = (facts: Facts, b: Booked) =>
  b.shot.at ? facts.forecast(b.cook)?.moments[b.shot.at.moment] : undefined

function checkWindow(facts: Facts, call: Call, b: Booked): Violation[] {
  const samples = samplesOf(facts, b)
  if (!samples) return []
  const parts = [
    ['early', 0.05],
    ['likely', 0.5],
    ['late', 0.95],
  ] as const
  const wrong = parts.filter(([part, p]) => !agrees(call.window[part], samples, p, facts.meatOn(b.cook)))
  if (wrong.length === 0) return []
  const names = wrong.map(([part]) => part).join(', ')
  return [
    violation('call-window-forecast', `Call "${call.id}" is not true to the forecast in its ${names} time.`, [b.id]),
  ]
}

/** Quantiles are defined in more ways than one: the neighbouring members bound what may be stated. */
function agrees(text: string | null, samples: Float64Array, p: number, meatOn: number): boolean {
  const { below, at, above } = rankAround(samples, p)
  if (text === null) return above === Number.POSITIVE_INFINITY
  if (at === Number.POSITIVE_INFINITY) return false
  const stated = Date.parse(text)
  return stated >= meatOn + below * 1000 - LIMITS.graceMs && stated <= meatOn + above * 1000 + LIMITS.graceMs
}

/** By the clock people stand by for the early time; a live call only plans for the likely one. */
function checkStandby(facts: Facts, call: Call, b: Booked): Violation[] {
  const times = b.shot.at ? facts.moment(b.cook, b.shot.at.moment) : null
  if (!times || times.likely === null) return []
  if (call.standby === null)
    return [
      violation('standby-missing', `Call "${call.id}" names no standby though ${call.moment} is likely to come.`, [
        b.id,
      ]),
    ]
  const byClock = call.trigger === null && call.follows === null
  const needed = (byClock ? (times.early ?? times.likely) : times.likely) - leadMs(b)
  const standby = Date.parse(call.standby)
  if (!(standby > Math.min(needed, b.setup) + LIMITS.graceMs)) return []
  return [
    violation(
      'standby-late',
      `Call "${call.id}" has its people standing by at ${facts.clock.show(standby)}; they are needed at ${facts.clock.show(Math.min(needed, b.setup))}.`,
      [b.id],
      b.people,
    ),
  ]
}

function checkTriggerCook(_: Facts, call: Call, b: Booked): Violation[] {
  if (!call.trigger || call.trigger.cook === b.cook) return []
  return [
    violation(
      'trigger-cook',
      `Call "${call.id}" watches the probe of "${call.trigger.cook}", and its shot is of "${b.cook}".`,
      [b.id],
    ),
  ]
}

const medianOf = (samples: Float64Array | undefined) =>
  samples ? rankAround(samples, 0.5).at : Number.POSITIVE_INFINITY

function checkTriggerProbe(facts: Facts, call: Call, b: Booked): Violation[] {
  const samples = samplesOf(facts, b)
  if (!call.trigger || !samples || medianOf(samples) > medianOf(facts.forecast(b.cook)?.moments['probe-in'])) return []
  return [
    violation('trigger-without-probe', `Call "${call.id}" waits for a probe that is not in yet at ${call.moment}.`, [
      b.id,
    ]),
  ]
}

function checkTriggerHot(facts: Facts, call: Call, b: Booked): Violation[] {
  const forecast = facts.forecast(b.cook)
  const [samples, pull] = [samplesOf(facts, b), forecast?.moments.pull]
  if (!call.trigger || !forecast || !samples) return []
  const readings = samples.map((s, m) => readingAt(forecast, m, Math.min(s, pull?.[m] ?? s)))
  const own = rankAround(readings.filter(Number.isFinite), 0.5).at
  if (call.trigger.probe < own) return []
  return [
    violation(
      'trigger-hot',
      `Call "${call.id}" waits for ${call.trigger.probe} °C, and the moment comes at about ${Math.round(own)} °C.`,
      [b.id],
    ),
  ]
}

function checkTriggerLead(facts: Facts, call: Call, b: Booked): Violation[] {
  const forecast = facts.forecast(b.cook)
  const samples = samplesOf(facts, b)
  const probe = call.trigger?.probe
  if (probe === undefined || !forecast || !samples) return []
  return tooLate(facts, b, 'trigger-late', call, samples, (m) => firstReading(forecast, m, probe))
}

function checkFollows(facts: Facts, call: Call, b: Booked): Violation[] {
  const samples = samplesOf(facts, b)
  const from = call.follows ? facts.forecast(b.cook)?.moments[call.follows.moment] : undefined
  if (!call.follows || !samples) return []
  const { moment, after } = call.follows
  if (!from)
    return [violation('follows-late', `Call "${call.id}" follows ${moment}, which this cook does not have.`, [b.id])]
  return tooLate(facts, b, 'follows-late', call, samples, (m) => (from[m] as number) + after)
}

/** A live call has everybody ready in all but 5 % of members; a moment that never comes is not missed. */
function tooLate(
  facts: Facts,
  b: Booked,
  rule: 'trigger-late' | 'follows-late',
  call: Call,
  samples: Float64Array,
  calledAt: (member: number) => number,
): Violation[] {
  const zero = facts.meatOn(b.cook)
  const before = (b.shot.at?.before ?? 0) * 1000
  const inTime = (s: number, m: number, called: number) =>
    readyAfterCall(facts, b, m, called, true) <= zero + s * 1000 - before + LIMITS.graceMs
  // Whom an earlier moment holds so long no call brings sooner: that is a clash of the two, and counted as one.
  const isLate = (s: number, m: number) =>
    Number.isFinite(s) && !inTime(s, m, zero + calledAt(m) * 1000) && inTime(s, m, Number.NEGATIVE_INFINITY)
  const late = samples.filter(isLate).length
  if (late <= samples.length * LIMITS.missShare) return []
  const share = Math.round((100 * late) / samples.length)
  return [
    violation(
      rule,
      `Call "${call.id}" leaves too little time for ${facts.titleOf(b.id)} in ${share} % of cooks.`,
      [b.id],
      b.people,
    ),
  ]
}

function readingAt({ trace }: DayForecast, member: number, atS: number): number {
  if (!Number.isFinite(atS)) return Number.NaN
  const x = Math.min(Math.max((atS - trace.startS) / trace.stepS, 0), trace.count - 1)
  const i = Math.floor(x)
  const low = trace.probeC[member * trace.count + i] as number
  const high = trace.probeC[member * trace.count + Math.min(i + 1, trace.count - 1)] as number
  return low + (high - low) * (x - i)
}

/** Seconds after meat-on at which a member's probe first reads a level, between probe-in and pull; else Infinity. */
export function firstReading(forecast: DayForecast, member: number, level: number): number {
  const { trace, moments } = forecast
  const from = moments['probe-in']?.[member] ?? Number.POSITIVE_INFINITY
  const to = moments.pull?.[member] ?? Number.POSITIVE_INFINITY
  if (!Number.isFinite(from)) return from
  if (readingAt(forecast, member, from) >= level) return from
  const end = Math.min(to, trace.startS + (trace.count - 1) * trace.stepS)
  for (let at = from; at < end; at += trace.stepS) {
    const next = Math.min(at + trace.stepS, end)
    const [a, b] = [readingAt(forecast, member, at), readingAt(forecast, member, next)]
    if (b >= level) return at + ((level - a) / (b - a)) * (next - at)
  }
  return Number.POSITIVE_INFINITY
}
