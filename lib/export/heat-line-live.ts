import type { MomentId } from '../model/moment-ids'
import type { Span95 } from '../session/board-facts'
import type { LiveLine } from '../session/session'
import { type Instant, instant } from '../units'
import { valueAt } from './heat-line-axis'
import type { CurvePoint, HeatFacts, MomentFact, Reading } from './heat-line-facts'

/** What the running day knows of one roast. */
export interface LiveRoast {
  /** The forecast as it stands now; null before the first. */
  readonly line: LiveLine | null
  /** When a moment is expected, or when it was marked. */
  readonly window: (moment: MomentId) => Span95
  readonly marked: (moment: MomentId) => boolean
  readonly read: readonly Reading[]
  readonly cookerRead: readonly Reading[]
}
const MINUTE = 60_000

/** This morning's picture with what was read, marked and forecast since. */
export function liveFacts(morning: HeatFacts, live: LiveRoast): HeatFacts {
  const all = [...morning.moments, ...morning.never].map((moment) => momentNow(moment, live))
  const moments = all.filter((m) => m.likely !== null).sort((a, b) => Number(a.likely) - Number(b.likely))
  const likely = (id: MomentId) => moments.find((m) => m.id === id)?.likely ?? null
  const slice = likely('first-slice')
  const curves = live.line
    ? curvesNow(live.line, { on: likely('meat-on'), lit: likely('fire-lit'), off: likely('off-heat'), slice })
    : null
  const sliced = curves && slice !== null ? valueAt(curves.meat, slice) : null
  const { from, to } = spanNow(morning, moments)
  return {
    ...morning,
    ...curves,
    from: instant(Math.min(from, morning.from)),
    to: instant(Math.max(to, morning.to)),
    heat: { from, to },
    moments,
    never: all.filter((m) => m.likely === null),
    ...(sliced ? { sliced } : {}),
    day: {
      read: live.read,
      cookerRead: live.cookerRead,
      // Until there is a live forecast this morning's is the forecast.
      morning: live.line ? morning.meat.map(({ at, likely: level }) => ({ at, level })) : [],
    },
  }
}

function momentNow(moment: MomentFact, live: LiveRoast): MomentFact {
  const { early, likely, late } = live.window(moment.id)
  const marked = live.marked(moment.id)
  return {
    ...moment,
    early,
    likely,
    late,
    morning: moment.likely,
    reached: likely === null ? moment.reached : Math.max(moment.reached, marked || late !== null ? 1 : 0.95),
    ...(marked ? { marked } : {}),
  }
}

/** From meat-on and the match to the likely slice, as on the plan. */
function curvesNow(line: LiveLine, { on, lit, off, slice }: Record<'on' | 'lit' | 'off' | 'slice', Instant | null>) {
  const [low, high] = [line.probeLowC ?? line.coreLowC, line.probeHighC ?? line.coreHighC]
  const end = slice === null ? Number.POSITIVE_INFINITY : slice + 12 * MINUTE
  const curve = (from: number, to: number, of: readonly (readonly number[])[]): CurvePoint[] =>
    line.t.flatMap((s, i) => {
      const at = instant(line.meatOn + s * 1000)
      const [least = 0, likely = 0, most = 0] = of.map((values) => values[i])
      return at >= from && at <= to ? [{ at, low: least, likely, high: most }] : []
    })
  return {
    meat: curve(on ?? line.meatOn, end, [low, line.probeC, high]),
    whole: [],
    cooker: curve(lit ?? 0, off ?? end, [line.cookerC, line.cookerC, line.cookerC]),
  }
}

/** Of the moments as they are expected now; the picture does not shrink below this morning's. */
function spanNow(morning: HeatFacts, moments: readonly MomentFact[]): { from: Instant; to: Instant } {
  const times = moments
    .flatMap((m) => [m.early, m.likely, m.id === 'carryover-peak' ? null : m.late])
    .filter((at) => at !== null)
  const { from, to } = morning.heat
  const lead = (morning.moments[0]?.early ?? from) - from
  return {
    from: instant(Math.min(from, ...times.map((at) => at - Math.max(lead, 5 * MINUTE)))),
    to: instant(Math.max(to, ...times.map((at) => at + 10 * MINUTE))),
  }
}
