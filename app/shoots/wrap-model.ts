import 'server-only'
import { cookerIdOf, keptCookers } from '@/lib/data/cookers'
import type { Layout } from '@/lib/day/layout'
import { foldLog } from '@/lib/log/fold'
import { EMPTY_LOG, merge } from '@/lib/log/log'
import { fromIso } from '@/lib/plan/clock'
import { timesOf } from '@/lib/session/played-out'
import { sessionDay } from '@/lib/session/session-day'
import { type Instant, instant, later, minutes, type UnitSystem } from '@/lib/units'
import { type CallRow, callRows } from '@/lib/wrap/calls'
import { headlines, windowSentence } from '@/lib/wrap/headline'
import { happenedAt, type MomentRow, momentRows } from '@/lib/wrap/moments'
import { type PersonRow, peopleRows } from '@/lib/wrap/people'
import { whyMissed } from '@/lib/wrap/takes'
import { boardBy, type Morning, type ToldCall } from '@/lib/wrap/told'
import { factsOfBoard } from '../set/facts-of'
import type { OpenShoot } from '../workbench'
import { forecastsBehind } from '../worked-out'
import { dayPlayedOf, type WhichDay } from './day-log'
import type { DayPlayed } from './rehearsed-day'
import { lessonName, type WhyAsked } from './wrap-why'

/** How long before the pull the board is asked what it said. */
export const BEFORE_MIN = [30, 60, 120, 180] as const
export type BeforeMin = (typeof BEFORE_MIN)[number]

export interface WrapModel {
  readonly invented: boolean
  readonly headlines: readonly string[]
  readonly rows: readonly MomentRow[]
  readonly windows: string
  readonly board: { readonly at: Instant; readonly beforeMin: BeforeMin } | null
  readonly calls: readonly CallRow[]
  readonly people: readonly PersonRow[]
  /** What the slow part is worked out from, and the name that it is remembered by. */
  readonly asked: WhyAsked
  readonly key: string
}

/** The day held against its plan; null where nothing of it was marked. */
export async function wrapModel(
  open: Pick<OpenShoot, 'id' | 'version' | 'shoot'>,
  layout: Layout,
  which: WhichDay,
  beforeMin: BeforeMin,
  units: UnitSystem,
): Promise<WrapModel | null> {
  const { shoot } = open
  const played = await dayPlayedOf(open.id, shoot, which)
  if (!played || played.lines.length === 0) return null
  // One by one: a night of a logger's readings is more than a call takes as arguments.
  const ended = instant([...timesOf(played.lines).values()].reduce((last, at) => Math.max(last, at), 0))
  const day = foldLog(merge(EMPTY_LOG, played.lines))
  if (Object.keys(day.marks).length === 0) return null
  const facts = factsOfBoard(shoot, forecastsBehind(shoot, layout), layout, units)
  const morning: Morning = Object.fromEntries(facts.cooks.map(({ id, windows }) => [id, windows]))
  const hero = shoot.cooks[0]?.id ?? ''
  const pull = happenedAt(day, hero, 'pull') ?? happenedAt(day, hero, 'off-heat') ?? ended
  const board = boardBy(played.forecasts, later(pull, minutes(-beforeMin)))
  const rows = momentRows({ shoot, day, morning, board, why: whyMissed(played.lines) })
  const earlier = await earlierLessons(open)
  const calls = callRows(callsOf(shoot, layout, played), day)
  return {
    invented: which.rehearsed ?? false,
    headlines: headlines(rows, hero, board, shoot.zone),
    rows,
    windows: windowSentence(rows),
    board: board && { at: board.at, beforeMin },
    calls,
    people: peopleRows({
      shoot,
      day,
      calls,
      meals: layout.meals.map(({ start, people }) => ({ start: fromIso(start), people })),
      alerts: Object.values(played.alerts),
    }),
    asked: { shoot, shootId: open.id, lids: layout.lidOpenings ?? {}, day, morning, ended, earlier },
    key: JSON.stringify([open.id, open.version, which.rehearsed ?? false, played.lines.length, earlier]),
  }
}

/** By cook, what its earlier cooks taught of its cooker: the one that this cook was kept under, else the one that its plan names. */
async function earlierLessons({ id: shootId, shoot }: Pick<OpenShoot, 'id' | 'shoot'>): Promise<WhyAsked['earlier']> {
  const kept = await keptCookers()
  const lessons = shoot.cooks.map(({ id, cooker }) => {
    const known = cooker.name === undefined ? undefined : cookerIdOf(cooker.name, cooker.kind)
    const own = lessonName(shootId, id)
    const cookers = kept.filter(({ kind }) => kind === cooker.kind)
    const found =
      cookers.find(({ lessons }) => lessons.some((one) => one.cook === own)) ?? cookers.find((one) => one.id === known)
    return [id, (found?.lessons ?? []).filter((one) => one.cook !== own)] as const
  })
  return Object.fromEntries(lessons)
}

const callsOf = (shoot: OpenShoot['shoot'], layout: Layout, { calls }: DayPlayed): ToldCall[] =>
  sessionDay(shoot, layout).calls.map(({ id, shot, title, cook, moment, people, standby }) => {
    const now = calls[id]
    const told = { called: now?.called ?? null, why: now?.why ?? null, state: now?.state ?? 'ahead' }
    return { id, shot, title, cook, moment, people, standby, ...told }
  })
