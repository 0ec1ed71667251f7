import 'server-only'
import type { KeptLine } from '@/lib/data/folder/log-journal'
import { loadKinds } from '@/lib/data/load-log'
import type { Layout } from '@/lib/day/layout'
import type { DayState } from '@/lib/log/day-state'
import { foldLog } from '@/lib/log/fold'
import { EMPTY_LOG, type Line, merge } from '@/lib/log/log'
import { readEntry } from '@/lib/log/read-entry'
import { type LastRePlan, lastRePlan, layoutNow } from '@/lib/session/announced-layout'
import { type Instant, instant } from '@/lib/units'

/** What every sheet, calendar and page of the plan shows: the day as the crew was told of it last. */
export interface Announced {
  readonly layout: Layout
  readonly last: LastRePlan | null
  /** Lines of the log that may have changed it: only ever more, even where one is taken back. */
  readonly changes: number
  /** When the server got the last of them. */
  readonly changed: Instant | null
}

const MAY_CHANGE = ['plan-change', 'shot-state', 'take', 'correction'] as const

export function readLine({ document, received, sent }: KeptLine): Line[] {
  const read = readEntry(document)
  return read.ok ? [{ entry: read.value, document, receipt: { received: instant(received), sent: instant(sent) } }] : []
}

/** A layout as it was worked out, and what was sent from the set since. */
export async function announced(shootId: string, layout: Layout, zone: string): Promise<Announced> {
  const changes = await loadKinds(shootId, MAY_CHANGE)
  if (changes.length === 0) return { layout, last: null, changes: 0, changed: null }
  const told: DayState = foldLog(merge(EMPTY_LOG, changes.flatMap(readLine)))
  return {
    layout: layoutNow(layout, told, zone),
    last: lastRePlan(told),
    changes: changes.length,
    changed: instant(Math.max(...changes.map(({ received }) => received))),
  }
}
