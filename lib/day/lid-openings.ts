import type { LidOpening } from '../model/cook'
import type { MomentId } from '../model/moment-ids'
import { medianOf } from '../model/quantiles'
import { fromIso } from '../plan/clock'
import type { Shoot, Shot } from '../plan/shoot'
import { roastOf, tasksOf } from '../plan/side-tasks'
import { seconds } from '../units'
import type { DayForecast } from './day-forecast'
import type { Layout } from './layout'
import { RULES } from './rules'

/** By cook, when the lid is off for a shot, s after meat-on; in order, none overlapping. */
export type LidOpenings = Readonly<Record<string, readonly LidOpening[]>>
type Forecasts = ReadonlyMap<string, DayForecast>
type Span = readonly [fromS: number, toS: number]

/** Here the lid comes off at the moment itself, filmed or not. */
const AT_THE_MOMENT: readonly MomentId[] = ['meat-on', 'turn', 'probe-in']

/** What shots at moments will open, whoever stands at them: where a layout has yet to be made. */
export function lidsOfMoments(shoot: Shoot, forecasts: Forecasts): LidOpenings {
  return byCook(shoot, forecasts, (cook) =>
    shotsOf(shoot, cook).flatMap((shot) => {
      const times = shot.at && forecasts.get(cook)?.moments[shot.at.moment]
      return shot.at && times ? [spanAt(shot.at, medianOf(times))] : []
    }),
  )
}

/** What the layout's placed shots and tasks open; where two share an opening it is one. */
export function lidsOfLayout(shoot: Shoot, layout: Layout, forecasts: Forecasts): LidOpenings {
  return byCook(shoot, forecasts, (cook) => {
    const zero = layout.meatOn[cook]
    if (zero === undefined) return []
    const after = (iso: string) => (fromIso(iso) - fromIso(zero)) / 1000
    const opening = tasksOf(shoot).filter((t) => t.lid === 'open' && (t.cook ?? shoot.cooks[0]?.id) === cook)
    const tasks = layout.tasks
      .filter(({ id }) => opening.some((t) => t.id === id))
      .map(({ start, end }): Span => [after(start), after(end)])
    const shots = shotsOf(shoot, cook).flatMap((shot) => {
      const placed = layout.shots.find((s) => s.id === shot.id)
      if (!placed) return []
      const span: Span = [after(placed.start), after(placed.end)]
      return [shot.at ? spanAt(shot.at, span[0] + beforeS(shot.at) + RULES.handleS) : span]
    })
    return [...shots, ...tasks]
  })
}

const shotsOf = (shoot: Shoot, cook: string) =>
  (shoot.shots ?? []).filter((s) => s.lid === 'open' && roastOf(shoot, s.cook) === cook)
type At = NonNullable<Shot['at']>
const beforeS = (at: At) => at.before ?? RULES.beforeMin * 60
function spanAt(at: At, momentS: number): Span {
  const from = AT_THE_MOMENT.includes(at.moment) ? momentS : momentS - beforeS(at)
  return [from, momentS + (at.after ?? RULES.afterMin * 60)]
}

/** Only while the meat is on: before and after, an open lid costs it nothing. To the second, so that it prints. */
function byCook(shoot: Shoot, forecasts: Forecasts, spansOf: (cook: string) => readonly Span[]): LidOpenings {
  return Object.fromEntries(
    shoot.cooks.map(({ id }) => {
      const off = forecasts.get(id)?.moments['off-heat']
      const until = off ? medianOf(off) : Number.POSITIVE_INFINITY
      const kept = spansOf(id).map(
        ([from, to]): Span => [Math.max(0, Math.round(from)), Math.round(Math.min(to, until))],
      )
      const whole = kept.filter(([from, to]) => Number.isFinite(to) && to > from)
      return [id, merged(whole).map(([from, to]): LidOpening => ({ at: seconds(from), open: seconds(to - from) }))]
    }),
  )
}

function merged(spans: readonly Span[]): Span[] {
  const joined: Span[] = []
  for (const [from, to] of spans.toSorted((a, b) => a[0] - b[0])) {
    const last = joined.at(-1)
    if (last && from <= last[1]) joined[joined.length - 1] = [last[0], Math.max(last[1], to)]
    else joined.push([from, to])
  }
  return joined
}

/** The same openings, none begun or ended a minute or more away from where it was. */
export function alikeLids(a: LidOpenings, b: LidOpenings): boolean {
  const cooks = new Set([...Object.keys(a), ...Object.keys(b)])
  return [...cooks].every((cook) => {
    const [one, two] = [a[cook] ?? [], b[cook] ?? []]
    return one.length === two.length && one.every((o, i) => near(o, two[i] as LidOpening))
  })
}
const MOVED_S = 60
const near = (a: LidOpening, b: LidOpening) =>
  Math.abs(a.at - b.at) < MOVED_S && Math.abs(a.at + a.open - b.at - b.open) < MOVED_S
