import type { EntryDocument } from '@/lib/log/entry'
import type { Line } from '@/lib/log/log'
import type { MomentId } from '@/lib/model/moment-ids'
import { type Instant, later, minutes } from '@/lib/units'
import { keptLine } from '../feed/kept-line'

/** A day as it is played: its lines in order of time, and where one may begin. */
export interface PlayedDay {
  readonly lines: readonly Line[]
  readonly begins: Instant
  readonly ends: Instant
  /** Where something happens at once. */
  readonly opensAt: Instant
  readonly moments: readonly { readonly cook: string; readonly moment: MomentId; readonly at: Instant }[]
}

/** As if it had come in when it happened: nothing waits here to be sent. */
export function playedLine(document: EntryDocument): Line | null {
  const line = keptLine({ document })
  return line && { ...line, receipt: { received: line.entry.at, sent: line.entry.at } }
}

/** A jump goes so far before its moment, so that one sees it come. */
export const AHEAD = minutes(10)

/** Null where nothing was ever logged. */
export function playedDay(timeline: readonly EntryDocument[]): PlayedDay | null {
  const lines = timeline.flatMap((document) => playedLine(document) ?? []).sort((a, b) => a.entry.at - b.entry.at)
  const [first, last] = [lines[0], lines.at(-1)]
  if (!first || !last) return null
  const moments = lines.flatMap(({ entry }) =>
    entry.kind === 'mark' ? [{ cook: entry.cook, moment: entry.moment, at: entry.at }] : [],
  )
  const opening =
    moments.find(({ moment }) => moment === 'probe-in') ?? moments.find(({ moment }) => moment === 'meat-on')
  return {
    lines,
    begins: first.entry.at,
    ends: later(last.entry.at, AHEAD),
    opensAt: opening ? before(opening.at, first.entry.at) : first.entry.at,
    moments,
  }
}

export const before = (at: Instant, begins: Instant): Instant => Math.max(begins, at - AHEAD * 1000) as Instant
