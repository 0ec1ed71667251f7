import { formatClock, fromIso } from '../plan/clock'
import { changeWords, type DayChange, withChange } from '../plan/day-changes'
import { parseShoot } from '../plan/parse'
import type { Shoot, ShootDocument } from '../plan/shoot'
import type { Problem } from '../refusals'
import { compare, shotsBetween, type WholeDay } from './compare-days'
import { holdLimit } from './hold-limit'
import { type MomentBeside, momentsBeside } from './moments-beside'
import { PRICES } from './rules'

/** Forecasts and lays out a shoot: the caller's, so that what is known is not worked out again. */
export type RunDay = (shoot: Shoot) => Pick<WholeDay, 'forecasts' | 'layout'>

export interface WhatIf {
  readonly change: DayChange
  readonly title: string
  /** To adopt it, save this. */
  readonly document: ShootDocument
  /** Why it cannot be had; then there is no day. */
  readonly problems: readonly Problem[]
  readonly day: WholeDay | null
  /** Shots that today has and this has not, and the other way round. */
  readonly lost: readonly string[]
  readonly gained: readonly string[]
  /** What it costs beside today, in the points of the search; less than nothing where it is the better day. */
  readonly price: number
  readonly moments: readonly MomentBeside[]
  /** At most six plain lines beside today's plan. */
  readonly lines: readonly string[]
  readonly safety: readonly string[]
}

/** One change, forecast and laid out anew, beside today's plan. */
export function whatIf(today: WholeDay, change: DayChange, run: RunDay): WhatIf {
  const call = formatClock(fromIso(today.layout.crewCall), today.shoot.zone)
  const document = withChange(today.document, change, today.shoot.day?.call ?? call)
  const base = { change, title: changeWords(change), document }
  const read = parseShoot(document)
  if (!read.ok) {
    const lines = read.problems.slice(0, 6).map((p) => p.sentence)
    return {
      ...base,
      problems: read.problems,
      day: null,
      lost: [],
      gained: [],
      price: 0,
      moments: [],
      lines,
      safety: [],
    }
  }
  const day = { document, shoot: read.value, ...run(read.value) }
  const safety = change.kind === 'hold' ? holdSentences(day, change) : []
  const { lost, gained } = shotsBetween(today.layout, day.layout)
  return {
    ...base,
    problems: [],
    day,
    lost,
    gained,
    price: priceOf(day) - priceOf(today),
    moments: momentsBeside(today, day),
    lines: compare(today, day, safety),
    safety,
  }
}

function holdSentences({ forecasts, shoot }: WholeDay, change: Extract<DayChange, { kind: 'hold' }>): string[] {
  const forecast = forecasts.get(change.cook ?? shoot.cooks[0]?.id ?? '')
  const limit = forecast && holdLimit(forecast, change.in)
  return limit ? [limit.sentence] : []
}

/** Dropped shots at their weight, every minute of the day, a wish that is missed. */
function priceOf({ shoot, layout }: WholeDay): number {
  const dropped = layout.dropped.flatMap((d) => shoot.shots?.find((s) => s.id === d.id) ?? [])
  const weight = dropped.reduce((sum, shot) => sum + PRICES.weight[shot.priority ?? 'should'], 0)
  const minutes = (fromIso(layout.wrap) - fromIso(layout.crewCall)) / 60_000
  const wish = layout.conflicts.some((c) => c.rule === 'slice-wish') ? PRICES.wishMissed : 0
  return weight + minutes * PRICES.dayPerMin + wish
}
