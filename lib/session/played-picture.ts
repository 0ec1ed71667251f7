import type { Layout } from '../day/layout'
import { lightBands } from '../day/sun'
import type { Line } from '../log/log'
import type { Forecast } from '../model/forecast'
import { windowOf } from '../model/quantiles'
import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { type Instant, instant, later, seconds } from '../units'
import { liveLine } from './live-line'
import type { TimedForecast } from './played-out'
import type { CallNow, LiveLine } from './session'
import type { SessionDay } from './session-day'

/** A day that was played, as small as a picture of it can be: times in minutes since `from`, levels in °C. */
export interface PlayedPicture {
  readonly zone: string
  readonly title: string
  readonly from: Instant
  readonly minutes: number
  /** In the plan's order; `at` is when it happened, `row` the step of its label. */
  readonly moments: readonly { readonly name: string; readonly at: number; readonly row: number }[]
  /** What was forecast, from when on. */
  readonly forecasts: readonly PlayedForecast[]
  readonly core: readonly (readonly [at: number, c: number])[]
  readonly cooker: readonly (readonly [at: number, c: number])[]
  readonly events: readonly { readonly at: number; readonly words: string }[]
  readonly targets: readonly number[]
  readonly light: readonly { readonly light: string; readonly from: number; readonly to: number }[]
}
export interface PlayedForecast {
  readonly from: number
  /** Before it the curve says nothing of the meat. */
  readonly meatOn: number
  /** Of each moment. */
  readonly windows: readonly (readonly [early: number, likely: number, late: number])[]
  readonly curve: readonly (readonly [at: number, low: number, likely: number, high: number, cooker: number])[]
}
export interface PictureInput {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly day: SessionDay
  /** The morning's, of the first cook. */
  readonly morning: Forecast
  readonly lines: readonly Line[]
  readonly forecasts: readonly TimedForecast[]
  readonly calls: Readonly<Record<string, CallNow>>
  /** What a label takes of the picture's width. */
  readonly labelMin: number
}

const BEFORE_MIN = 30
/** Room for the last label. */
const AFTER_MIN = 50
const CURVE_EACH_MIN = 6
const READ_EACH_MIN = 4
const WINDOW_SD = 1.645

export function playedPicture(input: PictureInput): PlayedPicture {
  const { shoot, day, lines, morning } = input
  const cook = day.cooks[0]
  const meatOn = fromIso(input.layout.meatOn[cook?.id ?? ''] ?? input.layout.start)
  const marks = new Map(
    lines.flatMap(({ entry }) => (entry.kind === 'mark' && entry.cook === cook?.id ? [[entry.moment, entry.at]] : [])),
  )
  const ids = (cook?.moments ?? []).filter((id) => marks.has(id))
  const times = ids.map((id) => marks.get(id) as Instant)
  const from = instant(Math.floor(Math.min(...times) / 60_000 - BEFORE_MIN) * 60_000)
  const min = (at: number) => Math.round((at - from) / 6000) / 10
  const minutes = Math.ceil(min(Math.max(...times)) + AFTER_MIN)
  const likelyOf = new Map(ids.map((id) => [id, windowOf(morning.moments[id] ?? new Float64Array())]))
  const first: PlayedForecast = {
    from: 0,
    meatOn: min(meatOn),
    windows: ids.map((id, i) => {
      const { early, likely, late } = likelyOf.get(id) ?? { early: null, likely: null, late: null }
      const at = (s: number | null) => min(s === null ? (times[i] as number) : later(meatOn, seconds(s)))
      return [at(early), at(likely), at(late)]
    }),
    curve: curveOf(liveLine(morning, meatOn, Number.POSITIVE_INFINITY), min, minutes),
  }
  const onTheDay = input.forecasts.map(({ at, forecast }): PlayedForecast => {
    const windows = ids.map((id, i): PlayedForecast['windows'][number] => {
      const told = forecast.expected.find((one) => one.cook === cook?.id && one.moment === id)
      const likely = told?.likely ?? (times[i] as number)
      const half = WINDOW_SD * (told?.sd ?? 0) * 1000
      return [min(likely - half), min(likely), min(likely + half)]
    })
    const line = forecast.lines?.[cook?.id ?? '']
    return {
      from: min(at),
      meatOn: min(line?.meatOn ?? meatOn),
      windows,
      curve: line ? curveOf(line, min, minutes) : [],
    }
  })
  const forecasts = [first, ...onTheDay]
  const rows = labelRows(forecasts, times.map(min), input.labelMin)
  return {
    zone: shoot.zone,
    title: shoot.title,
    from,
    minutes,
    moments: ids.map((id, i) => ({ name: cook?.names[id] ?? id, at: min(times[i] as number), row: rows[i] ?? 0 })),
    forecasts,
    core: readings(lines, 'core', min),
    cooker: readings(lines, 'cooker', min),
    events: eventsOf(input, marks)
      .map(({ at, words }) => ({ at: min(at), words }))
      .filter(({ at }) => at < minutes),
    targets: targetsOf(shoot),
    light: lightBands(shoot.place, from, instant(from + minutes * 60_000)).map(({ light, start, end }) => ({
      light,
      from: Math.max(0, min(start)),
      to: Math.min(minutes, min(end)),
    })),
  }
}

function curveOf(line: LiveLine, min: (at: number) => number, minutes: number): PlayedForecast['curve'] {
  let last = Number.NEGATIVE_INFINITY
  return line.t.flatMap((s, i): PlayedForecast['curve'] => {
    const at = min(line.meatOn + s * 1000)
    if (at < 0 || at > minutes || at < last + CURVE_EACH_MIN) return []
    last = at
    const of = (values: readonly number[]) => Math.round((values[i] ?? 0) * 10) / 10
    return [[at, of(line.coreLowC), of(line.probeC), of(line.coreHighC), Math.round(of(line.cookerC))]]
  })
}

function readings(lines: readonly Line[], sensor: string, min: (at: number) => number) {
  let last = Number.NEGATIVE_INFINITY
  return lines.flatMap(({ entry }): (readonly [number, number])[] => {
    if (entry.kind !== 'reading' || !entry.sensor.startsWith(sensor)) return []
    const at = min(entry.at)
    if (at < last + READ_EACH_MIN) return []
    last = at
    return [[at, Math.round(entry.temp * 10) / 10]]
  })
}

/** One step for each label for the whole play: above every later pole that its label ever reaches. */
function labelRows(
  forecasts: readonly PlayedForecast[],
  times: readonly number[],
  labelMin: number,
): readonly number[] {
  const rows = new Array<number>(times.length).fill(0)
  const order = times.map((_, i) => i).sort((a, b) => (times[b] ?? 0) - (times[a] ?? 0) || b - a)
  for (const [rank, i] of order.entries()) {
    const reached = order
      .slice(0, rank)
      .filter((j) => forecasts.some(({ windows }) => (windows[j]?.[1] ?? 0) < (windows[i]?.[1] ?? 0) + labelMin))
    rows[i] = Math.max(0, ...reached.map((j) => (rows[j] ?? 0) + 1))
  }
  return rows
}

const targetsOf = ({ cooks }: Shoot): readonly number[] =>
  (cooks[0]?.stages ?? []).flatMap((stage) =>
    (stage.do === 'roast' || stage.do === 'sear') && 'core' in stage.until ? [stage.until.core] : [],
  )

/** Who stands by for what, and what happened. */
function eventsOf({ shoot, day, layout, calls }: PictureInput, marks: ReadonlyMap<string, Instant>) {
  const cameras = new Map(layout.shots.map((shot) => [shot.id, shot.camera]))
  const places = new Map((shoot.shots ?? []).map((shot) => [shot.id, shot.place]))
  const first = day.cooks[0]?.id
  const called = day.calls
    .filter(({ cook }) => cook === first)
    .flatMap((call) => {
      const at = calls[call.id]?.called ?? calls[call.id]?.announced ?? call.standby
      const who = listOf((cameras.get(call.shot) ?? []).map((camera) => `camera ${camera}`))
      const place = places.get(call.shot)
      if (at === null || who === '') return []
      const many = (cameras.get(call.shot) ?? []).length > 1
      const words = `${who} ${many ? 'stand' : 'stands'} by${place ? ` at the ${place}` : ''}: “${call.title}”`
      return [{ at, words }]
    })
  const names = day.cooks[0]?.names ?? {}
  const happened = [...marks].map(([id, at]) => ({ at, words: `${names[id as keyof typeof names] ?? id}` }))
  return [...called, ...happened].sort((a, b) => a.at - b.at)
}
const listOf = (names: readonly string[]) =>
  names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : (names[0] ?? '')
