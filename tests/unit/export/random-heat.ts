import fc from 'fast-check'
import { zoneClock } from '../../../lib/export/heat-line-clock'
import type { HeatFacts, HeatView, MomentFact, ShotFact } from '../../../lib/export/heat-line-facts'
import { daylight } from '../../../lib/export/heat-line-light'
import { MOMENT_IDS } from '../../../lib/model/moment-ids'
import { celsius, type Instant, instant } from '../../../lib/units'
import { PLACE, ZONE } from './synthetic'

/** Days nobody planned: any order of lengths, names, windows and widths; no physics in them. */
const MIDNIGHT = Date.parse('2027-05-15T00:00:00+01:00')
const MINUTE = 60_000
const at = (min: number): Instant => instant(MIDNIGHT + Math.round(min) * MINUTE)
const sky = daylight(PLACE, at(0), at(4000))
const clocks = [
  zoneClock(ZONE, at(0), at(4000)),
  zoneClock(ZONE, at(0), at(4000), { clock: '12h', dates: 'month-first' }),
] as const

const NAMES = [
  'sear',
  'first slice',
  'cooker steady',
  'the crackling blisters all over',
  'Großaufnahme der Kruste am Rand',
]
const share = fc.double({ min: 0, max: 1, noNaN: true })

const shot = (from: number, long: number) =>
  fc
    .record({
      where: share,
      rolls: fc.integer({ min: 1, max: 25 }),
      name: fc.constantFrom(...NAMES),
      two: fc.boolean(),
    })
    .map(({ where, rolls, name, two }): Omit<ShotFact, 'id' | 'number'> => {
      const start = at(from + where * long)
      return {
        title: name,
        free: name.length > 11,
        cameras: two ? ['A', 'B'] : ['A'],
        people: ['x'],
        place: name.slice(0, 5),
        setup: instant(start - 5 * MINUTE),
        start,
        end: instant(start + rolls * MINUTE),
        live: where > 0.7,
        hard: where < 0.5,
      }
    })

function moment(from: number, long: number, now: number | null) {
  return fc
    .record({ where: share, wide: share, name: fc.constantFrom(...NAMES), ends: fc.boolean(), moved: share })
    .map(({ where, wide, name, ends, moved }, i = 0): Omit<MomentFact, 'id'> => {
      const likely = from + 20 + where * (long - 45)
      const marked = now !== null && likely < now
      const half = marked ? 0 : wide * long * 0.1 + i
      return {
        name,
        likely: at(likely),
        early: at(likely - half),
        late: !marked && ends && wide > 0.9 ? null : at(likely + half),
        reached: wide > 0.9 ? 0.7 : 1,
        ...(marked ? { marked } : {}),
        ...(now === null ? {} : { morning: at(likely + (moved - 0.5) * 60) }),
      }
    })
}

const facts = fc
  .record({
    from: fc.integer({ min: 200, max: 1400 }),
    long: fc.constantFrom(55, 90, 240, 480, 700, 1300),
    on: fc.option(share),
    shots: fc.constantFrom(0, 6, 24, 70),
  })
  .chain(({ from, long, on, shots }) => {
    const now = on === null ? null : Math.round(from + on * long)
    return fc.record({
      from: fc.constant(from),
      long: fc.constant(long),
      now: fc.constant(now),
      moments: fc.array(moment(from, long, now), { minLength: 1, maxLength: 11 }),
      shots: fc.array(shot(from, long), { minLength: shots, maxLength: shots }),
      hot: fc.integer({ min: 45, max: 96 }),
    })
  })
  .map(({ from, long, now, moments, shots, hot }) => ({ now, facts: factsOf(from, long, now, moments, shots, hot) }))

function factsOf(
  from: number,
  long: number,
  now: number | null,
  some: readonly Omit<MomentFact, 'id'>[],
  some2: readonly Omit<ShotFact, 'id' | 'number'>[],
  hot: number,
): HeatFacts {
  const moments = [...some]
    .sort((a, b) => Number(a.likely) - Number(b.likely))
    .map((each, i): MomentFact => ({ ...each, id: MOMENT_IDS[i] ?? 'first-slice' }))
  const curve = (low: number, high: number) =>
    Array.from({ length: 40 }, (_, i) => {
      const likely = low + (high - low) * (i / 39) ** 1.5
      return { at: at(from + long * (0.1 + (0.8 * i) / 39)), low: likely - 3, likely, high: likely + 4 }
    })
  const meat = curve(4, hot)
  const span = { from: at(from), to: at(from + long) }
  const read = meat
    .filter((point) => now !== null && point.at < at(now))
    .map(({ at: when, likely }) => ({ at: when, level: likely + 1 }))
  return {
    title: 'x',
    units: 'metric',
    clock: clocks[hot % 2 ? 1 : 0],
    ...span,
    heat: span,
    moments,
    never: [],
    meat,
    whole: [],
    cooker: curve(20, 160),
    targets: [
      { at: celsius(hot - 8), words: `${hot - 8} °C pull` },
      { at: celsius(hot - 3), words: `${hot - 3} °C off the heat` },
    ],
    minimum: { at: celsius(63), words: '63 °C, then 3 min: the food-safety authority’s minimum' },
    roastAt: celsius(150),
    searAt: hot > 70 ? celsius(300) : null,
    sliced: { low: hot - 2, likely: hot, high: hot + 2 },
    ...sky,
    roasts: [],
    lids: [{ at: at(from + long / 2), openS: 120 }],
    crew: {
      cameras: [
        { id: 'A', name: 'camera A', operator: 'x' },
        { id: 'B', name: 'Kamera der zweiten Einheit', operator: null },
      ],
      people: [{ id: 'x', name: 'Maximiliane-Antoinette', operator: false }],
      shots: some2
        .map((each, i): ShotFact => ({ ...each, id: `s${i}`, number: String(i + 1) }))
        .sort((a, b) => a.start - b.start),
      meals: [{ start: at(from + long * 0.6), end: at(from + long * 0.6 + 30), people: ['x'] }],
      sides: [],
      tentative: { from: at(from + long * 0.7), to: at(from + long) },
      called: moments.slice(0, 2).map(({ id }, i) => ({ moment: id, shot: `s${i}` })),
    },
    ...(now === null
      ? {}
      : { day: { read, cookerRead: read, morning: meat.map((p) => ({ at: p.at, level: p.high })) } }),
  }
}

/** A random day and a random way to look at it. */
export const randomHeat = fc
  .tuple(facts, fc.integer({ min: 332, max: 1920 }), fc.option(share, { freq: 3 }), fc.boolean(), fc.boolean())
  .map(([{ facts: made, now }, width, zoom, lanes, say]) => {
    const standing = width < 660
    const half = Math.min(3_600_000, (made.to - made.from) / 4)
    const about = made.from + (zoom ?? 0) * (made.to - made.from)
    const view: HeatView = {
      width: standing ? Math.min(width, 440) : width,
      standing,
      lanes,
      ...(now === null ? {} : { now: at(now) }),
      ...(zoom === null ? {} : { span: { from: instant(about - half), to: instant(about + half) } }),
      ...(say && zoom === null ? { say: { main: 'First slice about 21:02, 20:31 to 21:39.', why: [] } } : {}),
    }
    return { facts: made, view }
  })
