/** What a crew could do without a model: a line over the last 20 minutes, an exponential over the last 20 or 45. */

import { exponentialPast, lineAhead } from '../../lib/model/extrapolate'
import type { Sample } from '../../lib/model/readings'

export const BASELINES = {
  'line over 20 min': (samples: readonly Sample[], levelC: number, nowS: number) =>
    lineAhead(samples, levelC, nowS, 1200),
  'exponential over 20 min': (samples: readonly Sample[], levelC: number, nowS: number) =>
    exponentialPast(samples, levelC, nowS, 1200),
  'exponential over 45 min': (samples: readonly Sample[], levelC: number, nowS: number) =>
    exponentialPast(samples, levelC, nowS, 2700),
} as const
