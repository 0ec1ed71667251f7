import { celsius, formatShare, formatTemp, type Instant, instant } from '../units'
import type { DrawingTable } from './drawing'
import { valueAt } from './heat-line-axis'
import { clockAt } from './heat-line-clock'
import type { CurvePoint, HeatFacts, Reading, RoastFact } from './heat-line-facts'

/** Between the rows of the curve, as few as make some twelve rows. */
const STEPS_MIN = [5, 10, 15, 30, 60, 120]
const ROWS = 14

/** The picture's figures: the moments of every cook, what the first one's probe and cooker read, the light, the crew. */
export const heatTables = (facts: HeatFacts): DrawingTable[] => [
  ...facts.roasts.map((roast, i) => momentTable(facts, roast, i === 0)),
  curveTable(facts),
  ...readTable(facts),
  lightTable(facts),
  ...shotTable(facts),
]

function momentTable(facts: HeatFacts, roast: RoastFact, first: boolean): DrawingTable {
  const clock = (at: Instant | null) => (at === null ? 'never' : clockAt(facts.clock, at))
  const moments = first ? [...facts.moments, ...facts.never] : roast.moments
  const onTheDay = first && facts.day !== undefined
  return {
    caption: facts.roasts.length > 1 ? `Moments of ${roast.title}` : 'Moments',
    head: ['moment', 'likely', 'early', 'late', 'comes in', ...(onTheDay ? ['this morning', 'so it is'] : [])],
    rows: moments.map((m) => [
      m.name,
      clock(m.likely),
      clock(m.early),
      clock(m.late),
      `${formatShare(m.reached)} of cooks`,
      ...(onTheDay ? [clock(m.morning ?? null), m.marked ? 'happened' : 'ahead'] : []),
    ]),
  }
}

function curveTable(facts: HeatFacts): DrawingTable {
  const curve = [...facts.meat, ...facts.whole]
  const first = curve[0]?.at ?? facts.from
  const last = curve.at(-1)?.at ?? facts.from
  const minutes = (last - first) / 60_000
  const step = (STEPS_MIN.find((each) => minutes / each <= ROWS) ?? 120) * 60_000
  const count = Math.max(0, Math.floor((last - first) / step))
  const even = Array.from({ length: count + 1 }, (_, i) => instant(first + i * step))
  const times = last > (even.at(-1) ?? 0) + 60_000 ? [...even, last] : even
  const temp = (level: number | undefined) => (level === undefined ? '' : formatTemp(celsius(level), facts.units))
  const morning = facts.day?.morning
  return {
    caption:
      facts.whole.length > 0 ? 'Temperatures from meat on, left whole from the slice on' : 'Temperatures from meat on',
    head: ['time', 'probe, likely', 'low', 'high', 'cooker, likely', ...(morning ? ['this morning'] : [])],
    rows: times.map((at) => {
      const probe = valueAt(curve, at)
      const cooker = valueAt(facts.cooker, at)
      return [
        clockAt(facts.clock, at),
        temp(probe?.likely),
        temp(probe?.low),
        temp(probe?.high),
        temp(cooker?.likely),
        ...(morning ? [temp(valueAt(asCurve(morning), at)?.likely)] : []),
      ]
    }),
  }
}
const asCurve = (read: readonly Reading[]): CurvePoint[] =>
  read.map(({ at, level }) => ({ at, low: level, likely: level, high: level }))

/** The latest readings, as many as a page can list. */
const MOST_READ = 24
function readTable({ day, clock, units }: HeatFacts): DrawingTable[] {
  if (!day || day.read.length === 0) return []
  const latest = day.read.slice(-MOST_READ)
  return [
    {
      caption: day.read.length > MOST_READ ? `The last ${MOST_READ} readings of ${day.read.length}` : 'Readings',
      head: ['time', 'probe'],
      rows: latest.map(({ at, level }) => [clockAt(clock, at), formatTemp(celsius(level), units)]),
    },
  ]
}

function lightTable(facts: HeatFacts): DrawingTable {
  const shown = facts.light.filter(({ start, end }) => end > facts.from && start < facts.to)
  return {
    caption: 'Light',
    head: ['light', 'from', 'to'],
    rows: shown.map(({ name, start, end }) => [name, clockAt(facts.clock, start), clockAt(facts.clock, end)]),
  }
}

function shotTable({ crew, clock }: HeatFacts): DrawingTable[] {
  if (!crew || crew.shots.length === 0) return []
  return [
    {
      caption: 'Shots in the lanes',
      head: ['shot', 'stand by', 'rolls', 'ends', 'camera'],
      rows: crew.shots.map((shot) => [
        `${shot.number} ${shot.title}`,
        clockAt(clock, shot.setup),
        `${clockAt(clock, shot.start)}${shot.live ? ', called live' : ''}`,
        clockAt(clock, shot.end),
        shot.cameras.join(', '),
      ]),
    },
  ]
}
