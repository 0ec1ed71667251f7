import type { Layout } from '../day/layout'
import type { Place } from '../day/sun'
import type { Stage } from '../model/cook'
import type { Forecast } from '../model/forecast'
import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import { spreadOf, windowOf } from '../model/quantiles'
import type { ReadersWay } from '../plan/as-read'
import { fromIso } from '../plan/clock'
import { momentName } from '../plan/moments'
import type { Shoot } from '../plan/shoot'
import { type Celsius, celsius, formatTemp, type Instant, instant, later, seconds, type UnitSystem } from '../units'
import { zoneClock } from './heat-line-clock'
import { crewFacts } from './heat-line-crew'
import type { HeatFacts, MomentFact, RoastFact } from './heat-line-facts'
import { darkNear, daylight } from './heat-line-light'
import { planCurves } from './heat-line-plan-curves'

export interface HeatLineCook {
  readonly forecast: Forecast
  readonly meatOn: Instant
  readonly title: string
}
/** A plan, as the heat line shows it. */
export interface HeatPlan {
  readonly zone: string
  readonly place: Place
  readonly title: string
  readonly cooks: readonly HeatLineCook[]
  readonly shoot?: Shoot
  readonly layout?: Layout
  readonly minimum?: { readonly at: Celsius; readonly words: string }
  readonly units: UnitSystem
  /** How times are written; the core's own way unless said. */
  readonly way?: ReadersWay
}

const MINUTE = 60_000
/** Beyond its span a picture may reach a little, for its last label. */
const REACH = 4 * 60 * MINUTE

export function heatFacts(plan: HeatPlan, cook: HeatLineCook): HeatFacts {
  const all = momentFacts(cook)
  const moments = all.filter((m) => m.likely !== null).sort((a, b) => Number(a.likely) - Number(b.likely))
  const heat = spanOf(plan.place, moments, null)
  const { from, to } = plan.layout ? spanOf(plan.place, moments, plan.layout) : heat
  const reach = instant(to + Math.max(REACH, (to - from) * 0.5))
  const { stages, lidOpenings } = cook.forecast.cook
  return {
    title: plan.title,
    units: plan.units,
    clock: zoneClock(plan.zone, from, reach, plan.way),
    from,
    to,
    heat,
    moments,
    never: all.filter((m) => m.likely === null),
    ...planCurves(cook, moments, to),
    targets: targets(stages, plan.units),
    minimum: plan.minimum ?? null,
    roastAt: stages.find((s) => s.do === 'roast')?.at ?? celsius(150),
    searAt: stages.find((s) => s.do === 'sear')?.at ?? null,
    sliced: spreadOf(cook.forecast.atSlice.probeC),
    ...daylight(plan.place, from, reach),
    roasts: plan.cooks.map(roastFact),
    lids: [
      ...lidOpenings.map((lid) => ({ at: later(cook.meatOn, lid.at), openS: lid.open as number })),
      ...moments.filter(({ id }) => LIFTS.includes(id)).map((m) => ({ at: m.likely ?? cook.meatOn, openS: 60 })),
    ],
    crew: plan.shoot && plan.layout ? crewFacts(plan.shoot, plan.layout) : null,
  }
}
/** The lid is up for these, besides what the plan opens it for. */
const LIFTS: readonly MomentId[] = ['turn', 'probe-in', 'meat-on']

export function momentFacts({ forecast, meatOn }: HeatLineCook): MomentFact[] {
  const at = (s: number | null) => (s === null ? null : later(meatOn, seconds(Math.round(s))))
  return MOMENT_IDS.flatMap((id) => {
    const members = forecast.moments[id]
    if (!members) return []
    const { early, likely, late, reached } = windowOf(members)
    const name = momentName(id, forecast.cook.cooker.kind)
    return [{ id, name, early: at(early), likely: at(likely), late: at(late), reached }]
  })
}

function roastFact(cook: HeatLineCook): RoastFact {
  const moments = momentFacts(cook)
  const at = (id: MomentId) => moments.find((m) => m.id === id)?.likely
  const off = at('off-heat') ?? at('pull') ?? cook.meatOn
  return { title: cook.title, moments, on: cook.meatOn, off, end: at('first-slice') ?? off }
}

/** The peak's late end, long after the slice, is let run out of the picture. */
function spanOf(place: Place, moments: readonly MomentFact[], layout: Layout | null) {
  const call = layout ? fromIso(layout.crewCall) : Number.POSITIVE_INFINITY
  const wrap = layout ? fromIso(layout.wrap) : 0
  const first = Math.min(call, ...moments.map((m) => m.early ?? m.likely ?? Number.POSITIVE_INFINITY))
  const last = Math.max(wrap, ...moments.map((m) => (m.id === 'carryover-peak' ? m.likely : m.late) ?? m.likely ?? 0))
  // A short cook is not drawn small for the sake of its margins, or of a dusk that is far from it.
  const short = last - first < 90 * MINUTE
  const dark = short ? null : darkNear(place, last)
  const whole = (ms: number) => instant(Math.round(ms / MINUTE) * MINUTE)
  const [before, after] = short ? [8, 10] : [20, 25]
  return { from: whole(first - before * MINUTE), to: whole(Math.max(last, dark ?? 0) + after * MINUTE) }
}

function targets(stages: readonly Stage[], units: UnitSystem): HeatFacts['targets'] {
  const word = { roast: 'pull', sear: 'off the heat' }
  const seared = stages.some((s) => s.do === 'sear')
  return stages.flatMap((stage) => {
    if ((stage.do !== 'roast' && stage.do !== 'sear') || !('core' in stage.until)) return []
    const name = stage.do === 'roast' && !seared ? 'pull, off the heat' : word[stage.do]
    return [{ at: stage.until.core, words: `${formatTemp(stage.until.core, units)} ${name}` }]
  })
}
