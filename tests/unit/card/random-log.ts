import { type CookFacts, cookFacts } from '../../../lib/log/cook-facts'
import { foldLog } from '../../../lib/log/fold'
import type { Line } from '../../../lib/log/log'
import type { Forecast } from '../../../lib/model/forecast'
import { MOMENT_IDS, type MomentId } from '../../../lib/model/moment-ids'
import { logOf, mark, reading } from '../log/lines'

/** What was so on the day, as it was made up and before anybody logged it: the truth that findings are held against. */
export interface Filmed {
  /** Minutes after meat-on. */
  readonly atMin: Partial<Record<MomentId, number>>
  readonly probeC: Partial<Record<MomentId, number>>
  readonly roastC: number | null
  readonly searC: number | null
  /** The most that the cooker read while it roasted, and while it seared. */
  readonly roastHighC: number
  readonly searHighC: number
  /** What the log of that day says, read back from its lines. */
  readonly facts: CookFacts | null
}
/** Nobody marks the peak of the carryover. */
const MARKED = MOMENT_IDS.filter((id) => id !== 'carryover-peak')

const middleOf = (sorted: readonly number[]) =>
  sorted.length > 0 ? ((sorted[(sorted.length - 1) >> 1] ?? 0) + (sorted[sorted.length >> 1] ?? 0)) / 2 : null

/**
 * A day as one of the model's cooks would go, or slower and quicker than any of them (`pace`): marks to the minute, the
 * probe and the cooker's sensor read every two minutes with the flicker of thermometers.
 */
export function randomLog(f: Forecast, random: () => number): Filmed | null {
  const member = Math.floor(random() * f.members)
  const pace = random() < 0.4 ? 0.5 + 1.2 * random() : 1
  const planned = (id: MomentId) => f.moments[id]?.[member]
  const atMin: Filmed['atMin'] = {}
  for (const id of MARKED) {
    const t = planned(id)
    if (t !== undefined && Number.isFinite(t)) atMin[id] = Math.round((t * pace) / 60)
  }
  const { pull, 'first-slice': slice, 'off-heat': off, 'sear-start': sear } = atMin
  if (pull === undefined || slice === undefined || off === undefined) return null
  const { startS, stepS, count } = f.trace
  const traceAt = (curve: Float32Array, min: number) => {
    const at = Math.min(count - 1, Math.max(0, ((min * 60) / pace - startS) / stepS))
    const [i, part] = [Math.floor(at), at % 1]
    const value = (k: number) => curve[member * count + Math.min(count - 1, k)] ?? 0
    return (1 - part) * value(i) + part * value(i + 1)
  }
  const flicker = () => 0.2 * (random() - 0.5)
  const probe = (min: number) => traceAt(f.trace.probeC, min)
  const cooker = (min: number) => traceAt(f.trace.cookerC, min)
  const minutes = Array.from({ length: Math.floor(slice / 2) + 1 }, (_, i) => 2 * i)
  const heated = minutes.filter((min) => min <= off)
  const heats = (from: number, to: number) =>
    heated
      .filter((min) => min >= from && min <= to)
      .map(cooker)
      .sort((a, b) => a - b)
  const [roasting, searing] = [heats(0, pull), sear === undefined ? [] : heats(sear, off)]
  const probeC = Object.fromEntries(
    (['pull', 'off-heat', 'first-slice'] as const).map((id) => [id, probe(atMin[id] as number)]),
  )
  const lines: readonly Line[] = [
    ...Object.entries(atMin).map(([id, min]) => mark(min, id)),
    ...minutes.map((min) => reading(min, Number((probe(min) + flicker()).toFixed(1)))),
    ...heated.map((min) => reading(min, Number((cooker(min) + 5 * flicker()).toFixed(1)), {}, 'cooker')),
  ]
  return {
    atMin,
    probeC,
    roastC: middleOf(roasting),
    searC: middleOf(searing),
    roastHighC: roasting.at(-1) ?? 0,
    searHighC: searing.at(-1) ?? 0,
    facts: cookFacts(foldLog(logOf(...lines)), 'hero'),
  }
}
