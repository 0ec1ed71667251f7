/** Where a value passes a level inside one step. */

/** A signal to wait for: the probe or the cooker's reading, rising or falling through a level. */
export interface Watch {
  readonly signal: 'probe' | 'cooker'
  readonly levelC: number
  readonly rising: boolean
}

export const hasMet = (watch: Watch, value: number) => (watch.rising ? value >= watch.levelC : value <= watch.levelC)

/** The watch for a level seen from where the signal stands now: it waits to rise to a higher one, to fall to a lower one. */
export const toward = (signal: Watch['signal'], levelC: number, from: number): Watch => ({
  signal,
  levelC,
  rising: levelC >= from,
})

/** Share of the step (0 to 1) at which a value going from `before` to `after` passes the level. */
export function crossing(before: number, after: number, levelC: number): number {
  if (after === before) return 1
  return Math.min(1, Math.max(0, (levelC - before) / (after - before)))
}

/** Top of the parabola through three samples: offset from the middle one, and value. Falls back on the middle one. */
export function peakOf(before: number, top: number, after: number, beforeS: number, afterS: number) {
  const rise = (top - before) / beforeS
  const fall = (top - after) / afterS
  const bend = (rise + fall) / (beforeS + afterS)
  if (!(bend > 0)) return { offsetS: 0, value: top }
  const slope = (rise * afterS - fall * beforeS) / (beforeS + afterS)
  return { offsetS: slope / (2 * bend), value: top + (slope * slope) / (4 * bend) }
}

/** The same on the clock: the last three values of a signal that has begun to fall, the two steps between, and the time now. */
export function peakAt(before: number, top: number, after: number, beforeS: number, afterS: number, nowS: number) {
  const { offsetS, value } = peakOf(before, top, after, beforeS || afterS, afterS)
  return { timeS: nowS - afterS + offsetS, tempC: Math.max(top, value) }
}
