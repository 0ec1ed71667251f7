import 'server-only'
import { forecastsTold } from '@/lib/data/forecast-journal'
import { loadLog } from '@/lib/data/load-log'
import { hear } from '@/lib/data/server/bus'
import type { DayState } from '@/lib/log/day-state'
import { foldLog } from '@/lib/log/fold'
import { EMPTY_LOG, type Line, merge } from '@/lib/log/log'
import type { Shoot } from '@/lib/plan/shoot'
import { readLine } from '../announced'
import { loggedBeside, rehearsedBeside } from '../forecast-pool'
import { inventedReadings } from '../words/shared'
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
export const INVENTED = inventedReadings

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
  const key = JSON.stringify([shootId, planOf(shoot), lines.length, forecasts.length])
  return kept(key, async () => {
    const { layout } = laid
    return { lines, forecasts, ...(await loggedBeside({ shoot, layout, lines, forecasts })) }
  })
}

const loggedLines = async (shootId: string): Promise<readonly Line[]> =>
  (await loadLog(shootId, 0)).flatMap((line) => readLine(line))

async function rehearsedDayOf(shoot: Shoot): Promise<DayPlayed | null> {
  const laid = await layoutReady(shoot)
  return laid.ok ? kept(JSON.stringify(planOf(shoot)), () => rehearsedBeside(shoot, laid.layout)) : null
}
/** Words on paper and clips of cameras change nothing of a day. */
const planOf = (shoot: Shoot): Shoot => ({
  ...shoot,
  card: undefined,
  callSheet: undefined,
  coverage: undefined,
  risk: undefined,
  clips: undefined,
})

/** Kept for the process: pages and files of one day ask for it together. */
const holder = globalThis as { emberslatePlayed?: Map<string, Promise<DayPlayed>> }
const KEPT = 8
function played(): Map<string, Promise<DayPlayed>> {
  if (holder.emberslatePlayed) return holder.emberslatePlayed
  const days = new Map<string, Promise<DayPlayed>>()
  holder.emberslatePlayed = days
  // Whoever was taken out of a log leaves as many lines behind as there were.
  hear('erased', () => days.clear())
  return days
}
function kept(key: string, make: () => Promise<DayPlayed>): Promise<DayPlayed> {
  const days = played()
  const known = days.get(key)
  if (known) return known
  const made = make()
  made.catch(() => days.delete(key))
  days.set(key, made)
  if (days.size > KEPT) days.delete(days.keys().next().value as string)
  return made
}
