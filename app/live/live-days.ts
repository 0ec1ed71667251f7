import 'server-only'
import { LiveDay } from './live-day'

/** One for the process, whichever of Next's bundles asks. */
const shared = globalThis as { emberslateLiveDays?: Map<string, LiveDay> }

/** The live day of a shoot, begun when somebody first listens or writes to it. */
export function liveDay(shootId: string): LiveDay {
  shared.emberslateLiveDays ??= new Map()
  const days = shared.emberslateLiveDays
  const known = days.get(shootId)
  if (known) return known
  const made = new LiveDay(shootId, () => days.delete(shootId))
  days.set(shootId, made)
  return made
}
