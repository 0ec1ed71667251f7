import type { CrewFacts, HeatFacts, Reading } from '@/lib/export/heat-line-facts'
import { liveFacts } from '@/lib/export/heat-line-live'
import { markKey } from '@/lib/log/mark-key'
import { sensorKind } from '@/lib/log/sensor-kind'
import type { BoardFacts } from '@/lib/session/board-facts'
import { momentWindow } from '@/lib/session/board-view'
import type { Session } from '@/lib/session/session'
import { probesOf } from './probes'

/** The heat line of one roast as the day stands now. */
export function heatNow(morning: HeatFacts, session: Session, facts: BoardFacts, cook: string): HeatFacts {
  const live = liveFacts(morning, {
    line: session.forecast?.lines?.[cook] ?? null,
    window: (moment) => momentWindow(session, facts, cook, moment),
    marked: (moment) => session.told.marks[markKey(cook, moment)] !== undefined,
    read: readOf(session, cook, 'core'),
    cookerRead: readOf(session, cook, 'cooker'),
  })
  return { ...live, crew: morning.crew && crewNow(morning.crew, facts) }
}

/** A logger writes every few seconds; more than this no picture shows. */
const APART_MS = 60_000

/** Of the probe of this kind that has told most; the last reading is always among them. */
function readOf({ told }: Session, cook: string, kind: string): readonly Reading[] {
  const probes = probesOf(told, cook).filter((probe) => sensorKind(probe.sensor) === kind && !probe.wrong)
  const most = probes.reduce<(typeof probes)[number] | null>(
    (best, probe) => (best === null || probe.readings.length > best.readings.length ? probe : best),
    null,
  )
  const all = (most?.readings ?? []).map(({ at, temp }) => ({ at, level: temp as number })).sort((a, b) => a.at - b.at)
  let kept = Number.NEGATIVE_INFINITY
  return all.filter(({ at }, i) => {
    if (at - kept < APART_MS && i < all.length - 1) return false
    kept = at
    return true
  })
}

/** Shots where a re-plan put them. */
const crewNow = (crew: CrewFacts, { shots }: BoardFacts): CrewFacts => ({
  ...crew,
  shots: crew.shots.flatMap((shot) => {
    const now = shots[shot.id]
    return now ? [{ ...shot, setup: now.setupStart, start: now.start, end: now.end, people: now.people }] : []
  }),
})
