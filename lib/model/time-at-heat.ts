/** What one point's evenly sampled history (°C) comes to: log reduction, stays above a level, time between two levels. */
import type { Seconds } from '../units'
import { fromFahrenheit } from '../units'
import { lethalityPerS } from './lethality'

/** [fsis-appendix-a-1999] no credit below 130 °F. */
export const LETHALITY_FROM_C = fromFahrenheit(130)

/** Log reduction of one point over a history, logarithms of the rate taken as straight in between. */
export function lethalityLog(historyC: ArrayLike<number>, stepS: number): number {
  let sum = 0
  for (let i = 1; i < historyC.length; i++) sum += intervalLog(historyC[i - 1] as number, historyC[i] as number, stepS)
  return sum
}
function intervalLog(a: number, b: number, stepS: number) {
  const low = Math.min(a, b)
  const high = Math.max(a, b)
  if (high < LETHALITY_FROM_C) return 0
  const inside = low < LETHALITY_FROM_C ? (high - LETHALITY_FROM_C) / (high - low) : 1
  const r0 = lethalityPerS(Math.max(low, LETHALITY_FROM_C))
  const r1 = lethalityPerS(high)
  const mean = r1 / r0 > 1 + 1e-9 ? (r1 - r0) / Math.log(r1 / r0) : r0
  return mean * inside * stepS
}

/** Longest unbroken time at or above a level, with the crossings read off straight lines. */
export function longestAboveS(historyC: ArrayLike<number>, stepS: number, levelC: number): number {
  let run = 0
  let longest = 0
  for (let i = 1; i < historyC.length; i++) {
    const a = historyC[i - 1] as number
    const b = historyC[i] as number
    if (a >= levelC && b >= levelC) run += stepS
    else if (a < levelC && b >= levelC) run = (stepS * (b - levelC)) / (b - a)
    else if (a >= levelC) {
      longest = Math.max(longest, run + (stepS * (a - levelC)) / (a - b))
      run = 0
    }
    longest = Math.max(longest, run)
  }
  return longest
}

export const peakC = (historyC: ArrayLike<number>) => {
  let peak = Number.NEGATIVE_INFINITY
  for (let i = 0; i < historyC.length; i++) peak = Math.max(peak, historyC[i] as number)
  return peak
}

/** Time of a history's first `count` samples between two levels, s. */
export function betweenS(
  historyC: ArrayLike<number>,
  stepS: number,
  fromC: number,
  toC: number,
  count = historyC.length,
): Seconds {
  let sum = 0
  for (let i = 1; i < count; i++) {
    const a = historyC[i - 1] as number
    const b = historyC[i] as number
    const low = Math.min(a, b)
    const high = Math.max(a, b)
    const share =
      high === low
        ? Number(low >= fromC && low <= toC)
        : Math.max(0, Math.min(high, toC) - Math.max(low, fromC)) / (high - low)
    sum += share * stepS
  }
  return sum as Seconds
}

/** [fda-food-code-2017] 41 to 135 °F, the range in which germs grow: 5 to 57 °C. */
export const GROWTH_FROM_C = fromFahrenheit(41)
export const GROWTH_TO_C = fromFahrenheit(135)
/** Time of a history between 5 and 57 °C, s. */
export const growthTimeS = (historyC: ArrayLike<number>, stepS: number): Seconds =>
  betweenS(historyC, stepS, GROWTH_FROM_C, GROWTH_TO_C)

/** [fsis-appendix-a-2021] 50 to 130 °F, the warming up that must not take too long. */
const COME_UP_FROM_C = fromFahrenheit(50)
/** Time of a history between 10 and 54.4 °C before it first reaches the latter, s. */
export function comeUpS(historyC: ArrayLike<number>, stepS: number): Seconds {
  let there = 0
  while (there < historyC.length && (historyC[there] as number) < LETHALITY_FROM_C) there++
  return betweenS(historyC, stepS, COME_UP_FROM_C, LETHALITY_FROM_C, Math.min(there + 1, historyC.length))
}
