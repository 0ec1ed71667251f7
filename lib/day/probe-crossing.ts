import type { CookTimes } from './cook-times'

/**
 * When each member's probe first reads a level, minutes after meat-on: from probe-in on (if it reads more by then, at
 * probe-in), until pull, where it may come out for the sear. +Infinity where it does not.
 */
export function probeCrossing(cook: CookTimes, levelC: number): Float64Array {
  const found = new Float64Array(cook.members).fill(Number.POSITIVE_INFINITY)
  const [probeIn, pull] = [cook.at('probe-in'), cook.at('pull')]
  if (!probeIn) return found
  for (let m = 0; m < cook.members; m++) {
    const at = firstReading(cook, m, levelC, (probeIn[m] as number) * 60)
    if (at <= (pull?.[m] ?? Number.POSITIVE_INFINITY) * 60) found[m] = at / 60
  }
  return found
}

/** Seconds after meat-on; linear between the trace's samples. */
function firstReading(cook: CookTimes, member: number, levelC: number, fromS: number): number {
  const { startS, stepS, count, probeC } = cook.forecast.trace
  if (!Number.isFinite(fromS)) return Number.POSITIVE_INFINITY
  const row = member * count
  let i = Math.max(0, Math.floor((fromS - startS) / stepS))
  if (i >= count) return Number.POSITIVE_INFINITY
  if (readingAt(cook, member, fromS) >= levelC) return fromS
  for (i++; i < count; i++) {
    const now = probeC[row + i] as number
    if (now < levelC) continue
    const before = probeC[row + i - 1] as number
    const part = now > before ? (levelC - before) / (now - before) : 1
    return Math.max(fromS, startS + (i - 1 + Math.min(1, Math.max(0, part))) * stepS)
  }
  return Number.POSITIVE_INFINITY
}

/** What a member's probe reads at a time (or would, were it in), °C. */
export function readingAt(cook: CookTimes, member: number, atS: number): number {
  const { startS, stepS, count, probeC } = cook.forecast.trace
  const x = Math.min(Math.max((atS - startS) / stepS, 0), count - 1)
  const i = Math.min(Math.floor(x), count - 2)
  const low = probeC[member * count + i] as number
  const high = probeC[member * count + i + 1] as number
  return low + (high - low) * (x - i)
}
