import { formatClock } from '../plan/clock'
import { celsius, formatShare, formatTemp, type Instant, instant } from '../units'
import type { DrawingTable } from './drawing'
import { valueAt } from './heat-line-axis'
import { type HeatFacts, type HeatLineCook, type HeatLineInput, momentFacts } from './heat-line-facts'

const HALF_HOUR = 30 * 60_000

/** The picture's figures: the moments of every cook, and what the first one's probe and cooker read each half hour. */
export const heatTables = (input: HeatLineInput, facts: HeatFacts): DrawingTable[] => [
  ...input.cooks.map((cook) => momentTable(input, cook)),
  curveTable(input, facts),
]

function momentTable({ zone, cooks }: HeatLineInput, cook: HeatLineCook): DrawingTable {
  const clock = (at: Instant | null) => (at === null ? 'never' : formatClock(at, zone))
  return {
    caption: cooks.length > 1 ? `Moments of ${cook.title}` : 'Moments',
    head: ['moment', 'likely', 'early', 'late', 'comes in'],
    rows: momentFacts(cook).map((m) => [
      m.name,
      clock(m.likely),
      clock(m.early),
      clock(m.late),
      `${formatShare(m.reached)} of cooks`,
    ]),
  }
}

function curveTable(input: HeatLineInput, facts: HeatFacts): DrawingTable {
  const first = facts.meat[0]?.at ?? facts.from
  const last = facts.meat.at(-1)?.at ?? facts.from
  const count = Math.max(0, Math.floor((last - first) / HALF_HOUR))
  const times = Array.from({ length: count + 1 }, (_, i) => instant(first + i * HALF_HOUR))
  const temp = (level: number | undefined) => (level === undefined ? '' : formatTemp(celsius(level), input.units))
  return {
    caption: 'Temperatures from meat on',
    head: ['time', 'probe, likely', 'low', 'high', 'cooker, likely'],
    rows: times.map((at) => {
      const probe = valueAt(facts.meat, at)
      const cooker = valueAt(facts.cooker, at)
      return [
        formatClock(at, input.zone),
        temp(probe?.likely),
        temp(probe?.low),
        temp(probe?.high),
        temp(cooker?.likely),
      ]
    }),
  }
}
