import 'server-only'
import { forecastsTold } from '@/lib/data/forecast-journal'
import { loadLog } from '@/lib/data/load-log'
import type { DayState } from '@/lib/log/day-state'
import { foldLog } from '@/lib/log/fold'
import { EMPTY_LOG, type Line, merge } from '@/lib/log/log'
import type { Shoot } from '@/lib/plan/shoot'
import { playedOut } from '@/lib/session/played-out'
import { sessionDay } from '@/lib/session/session-day'
import { readLine } from '../announced'
import { rehearsedBeside } from '../forecast-pool'
import { layoutReady } from '../workbench'
import type { DayPlayed } from './rehearsed-day'

export interface DayLog {
  readonly day: DayState
  readonly lines: readonly Line[]
  /** Of a day that nobody filmed: whatever is made from it says so. */
  readonly invented: boolean
}
export interface WhichDay {
  /** The day that the rehearsal invents in place of the shoot's own. */
  readonly rehearsed?: boolean
}
/** The query of pages and files: `?day=rehearsed`. */
export const whichDay = (asked: string | readonly string[] | null | undefined): WhichDay => ({
  rehearsed: asked === 'rehearsed',
})
/** Said on every page and in every file that is made from such a day. */
export const INVENTED = 'Invented readings: the rehearsal’s day, not one that was filmed.'

/** The shoot's own log, or a rehearsed day played to its end with its crew's answers; without a layout that has no line. */
export async function dayLogOf(shootId: string, shoot: Shoot, { rehearsed = false }: WhichDay = {}): Promise<DayLog> {
  const lines = rehearsed ? ((await rehearsedDayOf(shoot))?.lines ?? []) : await loggedLines(shootId)
  return { day: foldLog(merge(EMPTY_LOG, lines)), lines, invented: rehearsed }
}

/** The same day as it was played: what was forecast on it, and what became of its calls and alerts. */
export async function dayPlayedOf(
  shootId: string,
  shoot: Shoot,
  { rehearsed = false }: WhichDay = {},
): Promise<DayPlayed | null> {
  if (rehearsed) return rehearsedDayOf(shoot)
  const laid = await layoutReady(shoot)
  if (!laid.ok) return null
  const lines = await loggedLines(shootId)
  const forecasts = await forecastsTold(shootId)
  const played = playedOut({ day: sessionDay(shoot, laid.layout), lines, forecasts, crewSeed: null })
  return { lines, forecasts, calls: played.session.calls, alerts: played.session.alerts }
}

const loggedLines = async (shootId: string): Promise<readonly Line[]> =>
  (await loadLog(shootId, 0)).flatMap((line) => readLine(line))

/** Kept for the process: pages and files of one day ask for it together. */
const holder = globalThis as { emberslateRehearsed?: Map<string, Promise<DayPlayed>> }
holder.emberslateRehearsed ??= new Map()
const KEPT = 8
async function rehearsedDayOf(shoot: Shoot): Promise<DayPlayed | null> {
  const laid = await layoutReady(shoot)
  if (!laid.ok) return null
  const days = holder.emberslateRehearsed as Map<string, Promise<DayPlayed>>
  const key = JSON.stringify({
    ...shoot,
    card: undefined,
    callSheet: undefined,
    coverage: undefined,
    risk: undefined,
    clips: undefined,
  })
  const known = days.get(key)
  if (known) return known
  const made = rehearsedBeside(shoot, laid.layout)
  made.catch(() => days.delete(key))
  days.set(key, made)
  if (days.size > KEPT) days.delete(days.keys().next().value as string)
  return made
}
