/** The coldest point of one member, and the coldest of skin and core, from meat-on to its first slice. */
import type { Forecast } from './forecast'

/** Samples of a member's trace between two times after meat-on; at least one. */
function samples({ trace }: Pick<Forecast, 'trace'>, fromS: number, toS: number): readonly [from: number, to: number] {
  const at = (s: number) => Math.min(trace.count, Math.max(0, Math.floor((s - trace.startS) / trace.stepS)))
  const from = Math.min(trace.count - 1, at(fromS))
  return [from, Math.max(from + 1, Math.min(trace.count, at(toS) + 1))]
}
const sliceS = (f: Pick<Forecast, 'moments'>, m: number) => f.moments['first-slice']?.[m] ?? Number.POSITIVE_INFINITY

/** To the end of the trace where it is never sliced. */
export function coldestUntilSlice(f: Pick<Forecast, 'trace' | 'moments'>, m: number): Float32Array {
  const [from, to] = samples(f, 0, sliceS(f, m))
  return f.trace.coreC.subarray(m * f.trace.count + from, m * f.trace.count + to)
}

/** The coldest that core or skin is between two times, °C. */
export function coldestBetween({ trace }: Pick<Forecast, 'trace'>, m: number, fromS: number, toS: number): number {
  const [from, to] = samples({ trace }, fromS, toS)
  let least = Number.POSITIVE_INFINITY
  for (let i = m * trace.count + from; i < m * trace.count + to; i++)
    least = Math.min(least, trace.coreC[i] as number, trace.surfaceC[i] as number)
  return least
}
