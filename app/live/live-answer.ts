import type { KeptLine } from '@/lib/data/folder/log-journal'
import type { Layout } from '@/lib/day/layout'
import { foldLog } from '@/lib/log/fold'
import { EMPTY_LOG, type Line, type Log, merge } from '@/lib/log/log'
import { readEntry } from '@/lib/log/read-entry'
import { fastestKernel } from '@/lib/model/kernels'
import { parseShoot } from '@/lib/plan/parse'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import { type LiveKept, liveForecast } from '@/lib/session/live-forecast'
import type { LiveForecast } from '@/lib/session/session'
import type { Instant } from '@/lib/units'

/** What whoever forecasts a day must know of it before its log. */
export interface Announced {
  readonly document: ShootDocument
  readonly layout: Pick<Layout, 'start' | 'meatOn' | 'lidOpenings'>
}
export type Asked = {
  readonly turn: number
  readonly shootId: string
  readonly version: number
  readonly now: Instant
  readonly before: LiveForecast | null
  /** Lines after the first `after` of the log. */
  readonly after: number
  readonly lines: readonly KeptLine[]
  readonly announced: Announced | null
}
/** `missing`: the day and its whole log must be sent. */
export type Told = { readonly turn: number } & ({ readonly forecast: LiveForecast } | { readonly missing: true })

interface Known {
  readonly version: number
  readonly shoot: Shoot
  readonly layout: Announced['layout']
  count: number
  log: Log
  kept: LiveKept
}
const days = new Map<string, Known>()
const MOST_DAYS = 8

/** The forecast of a day after some more lines; days and logs are remembered from one asking to the next. */
export function answerTo(asked: Asked): Told {
  const { turn, now, before } = asked
  const day = asked.announced ? learnt(asked, asked.announced) : days.get(asked.shootId)
  if (!day || day.version !== asked.version || day.count !== asked.after) return { turn, missing: true }
  day.count += asked.lines.length
  day.log = merge(day.log, asked.lines.flatMap(lineOf))
  const { shoot, layout } = day
  const made = liveForecast({ shoot, layout, told: foldLog(day.log), now, before, kernel: fastestKernel() }, day.kept)
  day.kept = made.kept
  return { turn, forecast: made.forecast }
}

function learnt({ shootId, version }: Asked, { document, layout }: Announced): Known | undefined {
  const parsed = parseShoot(document)
  if (!parsed.ok) return undefined
  const kept = days.get(shootId)?.kept ?? {}
  const day: Known = { version, shoot: parsed.value, layout, count: 0, log: EMPTY_LOG, kept }
  days.delete(shootId)
  days.set(shootId, day)
  if (days.size > MOST_DAYS) days.delete(days.keys().next().value as string)
  return day
}

/** Only what a forecast hears of: takes, notes and answers are many. */
const HEARD: ReadonlySet<unknown> = new Set(['reading', 'mark', 'probe-check', 'fire', 'what-if-adopted', 'correction'])
export const isHeard = ({ document }: KeptLine) => HEARD.has(document.kind)
function lineOf({ document, received, sent }: KeptLine): Line[] {
  if (!HEARD.has(document.kind)) return []
  const read = readEntry(document)
  return read.ok
    ? [{ entry: read.value, document, receipt: { received: received as Instant, sent: sent as Instant } }]
    : []
}
