import type { Instant } from '@/lib/units'
import { formatDuration, minutes } from '@/lib/units'
import { isSet, type MomentRow } from '@/lib/wrap/moments'
import { after, asItHappened, before } from '../../../words/wrap'

/** Where a time stands about the fact, in per cent of the picture's width; the fact stands in the middle. */
export interface FactAxis {
  readonly at: (time: Instant, fact: Instant) => number
  readonly ticks: readonly { readonly at: number; readonly words: string }[]
}

const STEPS_MIN = [5, 10, 20, 30, 60, 120, 240] as const
/** Room beside the outermost window. */
const ROOM = 1.1
const LEAST_MIN = 12

export function axisFor(rows: readonly MomentRow[]): FactAxis {
  const half = Math.max(LEAST_MIN, ...rows.map(farthestMin)) * ROOM
  const step = STEPS_MIN.find((min) => half / min < 3) ?? 480
  const at = (min: number) => 50 + (50 * min) / half
  const beside = Array.from({ length: Math.floor((0.86 * half) / step) }, (_, i) => (i + 1) * step)
  return {
    at: (time, fact) => Math.min(100, Math.max(0, at((time - fact) / 60_000))),
    ticks: [
      ...beside.map((min) => ({ at: at(-min), words: before(formatDuration(minutes(min))) })),
      { at: 50, words: asItHappened },
      ...beside.map((min) => ({ at: at(min), words: after(formatDuration(minutes(min))) })),
    ],
  }
}

function farthestMin({ happened, morning, board }: MomentRow): number {
  if (happened === null) return 0
  const edges = [...(isSet(morning) ? [morning.likely] : [morning.early, morning.late]), board?.early, board?.late]
  return Math.max(0, ...edges.map((edge) => (edge == null ? 0 : Math.abs(edge - happened) / 60_000)))
}
