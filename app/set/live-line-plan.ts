import { markKey } from '@/lib/log/mark-key'
import type { BoardFacts } from '@/lib/session/board-facts'
import { momentWindow } from '@/lib/session/board-view'
import type { Session } from '@/lib/session/session'
import { type Instant, instant } from '@/lib/units'
import { probesOf } from './probes'

/** One moment on the line: where its pole stands. */
export interface LineMoment {
  readonly name: string
  readonly at: Instant
  readonly early: Instant | null
  readonly late: Instant | null
  readonly marked: boolean
}
export interface Dot {
  readonly at: Instant
  readonly c: number
}
/** What the live picture is drawn from: one roast, in the time it spans. */
export interface LinePlan {
  readonly from: Instant
  readonly to: Instant
  readonly moments: readonly LineMoment[]
  readonly core: readonly Dot[]
  readonly cooker: readonly Dot[]
  /** After meat-on, at each of `t`. */
  readonly forecast: {
    readonly at: readonly Instant[]
    readonly core: readonly number[]
    readonly low: readonly number[]
    readonly high: readonly number[]
    readonly cooker: readonly number[]
  } | null
  readonly topC: number
  readonly cookerTopC: number
}

const LEAD_MS = 20 * 60_000
const TAIL_MS = 25 * 60_000

export function linePlan(session: Session, facts: BoardFacts, cook: string): LinePlan | null {
  const of = session.day.cooks.find(({ id }) => id === cook)
  const moments = (of?.moments ?? []).flatMap((moment): LineMoment[] => {
    const { early, likely, late } = momentWindow(session, facts, cook, moment)
    if (likely === null) return []
    const marked = session.told.marks[markKey(cook, moment)] !== undefined
    return [{ name: of?.names[moment] ?? moment, at: likely, early, late, marked }]
  })
  if (moments.length === 0) return null
  const dots = (kind: string) => readOf(session, cook, kind)
  const line = session.forecast?.lines?.[cook]
  const forecast = line
    ? {
        at: line.t.map((s) => instant(line.meatOn + s * 1000)),
        core: line.probeC,
        low: line.coreLowC,
        high: line.coreHighC,
        cooker: line.cookerC,
      }
    : null
  const times = moments.flatMap(({ at, late }) => [at, late ?? at])
  const [core, cooker] = [dots('core'), dots('cooker')]
  return {
    from: instant(Math.min(...times) - LEAD_MS),
    to: instant(Math.max(...times) + TAIL_MS),
    moments,
    core,
    cooker,
    forecast,
    topC: roundUp(Math.max(60, ...core.map(({ c }) => c), ...(forecast?.high ?? [])), 10),
    cookerTopC: roundUp(Math.max(100, ...cooker.map(({ c }) => c), ...(forecast?.cooker ?? [])), 50),
  }
}
const roundUp = (value: number, step: number) => Math.ceil(value / step) * step

const readOf = ({ told }: Session, cook: string, kind: string): readonly Dot[] =>
  probesOf(told, cook)
    .filter((probe) => probe.sensor.startsWith(kind) && !probe.wrong)
    .flatMap(({ readings }) => readings.map(({ at, temp }) => ({ at, c: temp })))
    .sort((a, b) => a.at - b.at)

/** Rough advance of the chart's lettering, px a letter. */
export const LETTER_PX = 6.9
/** The label of a moment on a wide picture. */
export const flagWords = (clock: (at: Instant) => string, { name, at, early, late, marked }: LineMoment): string =>
  `${clock(at)} ${name}${marked || early === null || late === null || clock(early) === clock(late) ? '' : `, ${clock(early)} to ${clock(late)}`}`

/**
 * On which step each label stands, from the last moment to the first: one above every later pole that its label would
 * reach. A staircase that falls to the right.
 */
export function flagSteps(labels: readonly { readonly x: number; readonly words: string }[]): readonly number[] {
  const steps = new Array<number>(labels.length).fill(0)
  const order = labels.map((_, i) => i).sort((a, b) => (labels[b]?.x ?? 0) - (labels[a]?.x ?? 0) || b - a)
  for (const [rank, i] of order.entries()) {
    const { x, words } = labels[i] as { x: number; words: string }
    const reached = order.slice(0, rank).filter((j) => (labels[j]?.x ?? 0) < x + 12 + words.length * LETTER_PX)
    steps[i] = Math.max(0, ...reached.map((j) => (steps[j] ?? 0) + 1))
  }
  return steps
}
