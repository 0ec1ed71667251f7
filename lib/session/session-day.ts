import type { Call, Layout, PlacedShot } from '../day/layout'
import { handleMin } from '../day/moment-job'
import { RULES } from '../day/rules'
import type { MomentId } from '../model/moment-ids'
import { fromIso } from '../plan/clock'
import { momentName, momentsOf } from '../plan/moments'
import type { Cook, Shoot, Shot } from '../plan/shoot'
import { type Celsius, celsius, type Instant, minutes, type Seconds, seconds } from '../units'
import { HOT_AIR_C, OUT_HOT_S, OUT_S } from './food-clock'

/** All that the live session needs of the day as it was announced: who is called where, and who minds which fire. */
export interface SessionDay {
  readonly people: readonly { readonly id: string; readonly name?: string; readonly roles: readonly string[] }[]
  readonly cooks: readonly SessionCook[]
  readonly calls: readonly SessionCall[]
  readonly shots: Readonly<Record<string, SessionShot>>
  /** Gone: a re-plan dropped it. */
  readonly meals: readonly { readonly start: Instant; readonly people: readonly string[]; readonly gone?: true }[]
  /** Shots without a place this morning: a re-plan may bring them in. */
  readonly spare?: readonly SpareShot[]
  /** Dishes that share a cooker: from when somebody says that they stand out, their clock runs too. */
  readonly sides?: readonly { readonly id: string; readonly title: string; readonly outLimit: Seconds }[]
}
export interface SessionCook {
  readonly id: string
  readonly moments: readonly MomentId[]
  /** The crew's word for each. */
  readonly names: Readonly<Partial<Record<MomentId, string>>>
  /** What the probe reads at pull, where the roast ends by its core. */
  readonly pullAt: Celsius | null
  /** How long cooked food may stand out. */
  readonly outLimit: Seconds
}
/** A call for a shot at a moment; the lead is release, setup and what is rolled before. */
export interface SessionCall {
  readonly id: string
  readonly shot: string
  readonly title: string
  readonly cook: string
  readonly moment: MomentId
  readonly release: Seconds
  readonly setup: Seconds
  readonly before: Seconds
  readonly after: Seconds
  /** As announced, and the likely time of the moment that stood behind it. */
  readonly standby: Instant | null
  readonly likely: Instant | null
  readonly trigger: Celsius | null
  readonly follows: { readonly moment: MomentId; readonly after: Seconds } | null
  readonly people: readonly string[]
}
/** Who is seen or heard in a shot, and who stands behind its cameras. */
export interface SessionShot {
  readonly title: string
  /** By a locked-off camera, which holds nobody. */
  readonly locked?: true
  readonly inShot: readonly string[]
  readonly operators: readonly string[]
}

export interface SpareShot {
  readonly shot: string
  readonly crew: SessionShot
  /** Where it stands at a moment. */
  readonly call: SessionCall | null
}

export function sessionDay(shoot: Shoot, layout: Layout): SessionDay {
  const shots = new Map((shoot.shots ?? []).map((shot) => [shot.id, shot]))
  return {
    people: (shoot.people ?? []).map(({ id, name, roles }) => ({ id, ...(name === undefined ? {} : { name }), roles })),
    cooks: shoot.cooks.map((cook) => cookOf(cook, shoot.weather?.air)),
    calls: layout.calls.flatMap((call) => callOf(call, shots.get(call.for)) ?? []),
    shots: Object.fromEntries(layout.shots.map((placed) => [placed.id, shotOf(placed, shots.get(placed.id))])),
    meals: layout.meals.map(({ start, people }) => ({ start: fromIso(start), people })),
    spare: spareOf(shoot, layout),
    sides: (shoot.sides ?? []).map(({ id, title }) => ({ id, title, outLimit: outLimitOf(shoot.weather?.air) })),
  }
}

function cookOf(cook: Cook, airC: number | undefined): SessionCook {
  const moments = momentsOf(cook)
  const roast = cook.stages.findLast((stage) => stage.do === 'roast')
  const core = roast && 'core' in roast.until ? roast.until.core : null
  return {
    id: cook.id,
    moments,
    names: Object.fromEntries(moments.map((moment) => [moment, momentName(moment, cook.cooker.kind)])),
    pullAt: core === null || core === undefined ? null : celsius(core),
    outLimit: outLimitOf(airC),
  }
}
const outLimitOf = (airC: number | undefined) => seconds(airC !== undefined && airC > HOT_AIR_C ? OUT_HOT_S : OUT_S)

function callOf(call: Call, shot: Shot | undefined): SessionCall | null {
  if (!shot || call.moment === null || call.cook === null) return null
  return {
    ...calledFor(shot, call.cook, call.moment),
    id: call.id,
    standby: call.standby === null ? null : fromIso(call.standby),
    likely: call.window.likely === null ? null : fromIso(call.window.likely),
    trigger: call.trigger ? celsius(call.trigger.probe) : null,
    follows: call.follows,
    people: call.people,
  }
}

const calledFor = (shot: Shot, cook: string, moment: MomentId) => ({
  shot: shot.id,
  title: shot.title,
  cook,
  moment,
  release: minutes(RULES.releaseMin),
  setup: seconds((shot.setup ?? minutes(RULES.setupMin)) + minutes(RULES.walkMin)),
  before: seconds((shot.at?.before ?? minutes(RULES.beforeMin)) + minutes(handleMin)),
  after: shot.at?.after ?? minutes(RULES.afterMin),
})

/** Such a shot is called by the forecast alone: nobody worked out for it what the probe must read. */
function spareOf(shoot: Shoot, { shots }: Layout): SpareShot[] {
  const placed = new Set(shots.map(({ id }) => id))
  return (shoot.shots ?? []).flatMap((shot) => {
    if (placed.has(shot.id)) return []
    const cook = shot.cook ?? shoot.cooks[0]?.id
    const called = shot.at && cook !== undefined ? calledFor(shot, cook, shot.at.moment) : null
    const unknown = { standby: null, likely: null, trigger: null, follows: null, people: [] }
    const crew = { title: shot.title, operators: [], inShot: [], ...(shot.locked ? { locked: true as const } : {}) }
    return [{ shot: shot.id, crew, call: called && { ...called, ...unknown, id: `call-${shot.id}` } }]
  })
}

/** A locked-off camera holds nobody. */
function shotOf({ id, people, camera }: PlacedShot, shot: Shot | undefined): SessionShot {
  const operators = shot?.locked ? 0 : camera.length
  const inShot = shot?.locked ? [] : people.slice(operators)
  const locked = shot?.locked ? { locked: true as const } : {}
  return { title: shot?.title ?? id, operators: people.slice(0, operators), inShot, ...locked }
}
