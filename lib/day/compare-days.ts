import type { Forecast } from '../model/forecast'
import { medianOf, windowOf } from '../model/quantiles'
import { formatClock, fromIso } from '../plan/clock'
import type { Shoot, ShootDocument } from '../plan/shoot'
import { celsius, formatShare, formatTempBoth, later, type Seconds } from '../units'
import type { Layout } from './layout'
import { listed, quoted } from './words'

/** A day with all that it was made from; the forecasts as they are served. */
export interface WholeDay {
  readonly document: ShootDocument
  readonly shoot: Shoot
  readonly forecasts: ReadonlyMap<string, Forecast>
  readonly layout: Layout
}
const MOST_LINES = 6

/** What a changed day is beside today's, in at most six plain lines; `safety` comes last and is never left out. */
export function compare(today: WholeDay, then: WholeDay, safety: readonly string[] = []): string[] {
  const lines = [
    sliceLine(today, then),
    ...dayLines(today, then),
    shotsLine(today, then),
    ...captureLine(today, then),
    ...foodLine(today, then),
  ]
  return [...lines.slice(0, MOST_LINES - Math.min(1, safety.length)), ...safety.slice(0, 1)]
}

type Slice = { readonly likely: number; readonly text: string }
function sliceOf({ shoot, forecasts, layout }: WholeDay): Slice | null {
  const cook = shoot.cooks[0]?.id ?? ''
  const samples = forecasts.get(cook)?.moments['first-slice']
  const zero = fromIso(layout.meatOn[cook] ?? layout.start)
  const window = samples && windowOf(samples)
  if (!window?.likely) return null
  const at = (s: Seconds | null) => (s === null ? 'never' : formatClock(later(zero, s), shoot.zone))
  return {
    likely: later(zero, window.likely),
    text: `${at(window.likely)} (${at(window.early)} to ${at(window.late)})`,
  }
}

function sliceLine(today: WholeDay, then: WholeDay): string {
  const [now, other] = [sliceOf(today), sliceOf(then)]
  if (!other) return 'The roast is never sliced in most cooks.'
  if (!now) return `First slice ${other.text}; today it is never sliced in most cooks.`
  const min = Math.round((other.likely - now.likely) / 60_000)
  if (min === 0) return `First slice ${other.text}, as today.`
  return `First slice ${other.text}, ${Math.abs(min)} min ${min > 0 ? 'later' : 'sooner'} than today.`
}

function dayLines(today: WholeDay, then: WholeDay): string[] {
  const at = ({ layout, shoot }: WholeDay, key: 'start' | 'crewCall' | 'wrap') =>
    formatClock(fromIso(layout[key]), shoot.zone)
  const keys = [
    ['crewCall', 'call'],
    ['start', 'meat on'],
    ['wrap', 'wrap'],
  ] as const
  const moved = keys.filter(([key]) => at(today, key) !== at(then, key))
  const parts = moved.map(([key, name]) => `${name} at ${at(then, key)} instead of ${at(today, key)}`)
  const text = listed(parts)
  return text === '' ? [] : [`${text.charAt(0).toUpperCase()}${text.slice(1)}.`]
}

function shotsLine(today: WholeDay, then: WholeDay): string {
  const { lost, gained } = shotsBetween(today.layout, then.layout)
  const titles = (ids: readonly string[]) => {
    const all = ids.map((id) => quoted(then.shoot.shots?.find((s) => s.id === id)?.title ?? id))
    return all.length > 3 ? `${all.slice(0, 2).join(', ')} and ${all.length - 2} more` : listed(all)
  }
  if (lost.length === 0)
    return gained.length === 0 ? 'No shot is lost.' : `No shot is lost; ${titles(gained)} finds a place.`
  const found = gained.length === 0 ? '' : `; ${titles(gained)} finds a place`
  return `Lost: ${titles(lost)}${found}.`
}

const joint = ({ capture }: Layout) => formatShare(capture.joint)
function captureLine({ layout: now }: WholeDay, { layout: then }: WholeDay): string[] {
  if (joint(now) === joint(then)) return []
  return [`All moments are caught in ${joint(then)} of cooks instead of ${joint(now)}.`]
}

function foodLine(today: WholeDay, then: WholeDay): string[] {
  const of = ({ forecasts, shoot }: WholeDay) => forecasts.get(shoot.cooks[0]?.id ?? '')
  const [now, other] = [of(today), of(then)]
  if (!now || !other) return []
  const core = (f: Forecast) => {
    const c = medianOf(f.atSlice.coreC)
    return Number.isFinite(c) ? formatTempBoth(celsius(c)) : 'nothing, never being sliced'
  }
  const loss = (f: Forecast) => formatShare(medianOf(f.lossFrac))
  if (core(now) === core(other) && loss(now) === loss(other)) return []
  return [
    `When sliced the middle is at ${core(other)} (today ${core(now)}), and ${loss(other)} of its weight is lost (today ${loss(now)}).`,
  ]
}

const placedIds = ({ shots }: Layout) => shots.map(({ id }) => id)
/** Shots that today has and the other day has not, and the other way round. */
export function shotsBetween(today: Layout, then: Layout): { readonly lost: string[]; readonly gained: string[] } {
  const [now, other] = [placedIds(today), placedIds(then)]
  return { lost: now.filter((id) => !other.includes(id)), gained: other.filter((id) => !now.includes(id)) }
}
