/** When the probe would come to a level if it went on as it has lately: a check on the model that knows no model. */
import type { Sample } from './readings'

const LEAST_SAMPLES = 4
/** Rates of the exponential that are tried, 1/s: from a climb that doubles in half an hour to one that fades in ten minutes. */
const RATES = Array.from({ length: 49 }, (_, i) => (i - 16) * 5e-5)

const lately = (samples: readonly Sample[], nowS: number, overS: number) =>
  samples.filter(({ timeS }) => timeS <= nowS && timeS >= nowS - overS)

/** A straight line through the last readings; none where they do not climb. */
export function lineAhead(samples: readonly Sample[], levelC: number, nowS: number, overS: number): number | undefined {
  const last = lately(samples, nowS, overS)
  if (last.length < LEAST_SAMPLES) return undefined
  const { slope, offset } = straight(
    last.map(({ timeS }) => timeS - nowS),
    last,
  )
  return slope > 0 ? nowS + Math.max(0, (levelC - offset) / slope) : undefined
}

/** T = a + b e^(-ct) through the last readings, least squares over a, b and c; none where it never gets there. */
export function exponentialPast(
  samples: readonly Sample[],
  levelC: number,
  nowS: number,
  overS: number,
): number | undefined {
  const last = lately(samples, nowS, overS)
  if (last.length < LEAST_SAMPLES) return undefined
  const fits = RATES.map((rate) => {
    const x = last.map(({ timeS }) => basis(rate, timeS - nowS))
    return { rate, ...straight(x, last) }
  })
  const { rate, slope, offset } = fits.reduce((best, fit) => (fit.squares < best.squares ? fit : best))
  // slope · basis(t) = level - offset
  const wanted = (levelC - offset) / slope
  if (!(slope > 0)) return undefined
  if (wanted <= 0) return nowS
  const aheadS = Math.abs(rate) < 1e-9 ? wanted : -Math.log(1 - rate * wanted) / rate
  return Number.isFinite(aheadS) ? nowS + aheadS : undefined
}
/** (1 - e^(-ct)) / c: t itself where c is 0. */
const basis = (rate: number, t: number) => (Math.abs(rate) < 1e-9 ? t : -Math.expm1(-rate * t) / rate)

function straight(x: readonly number[], samples: readonly Sample[]) {
  const n = samples.length
  const meanX = x.reduce((sum, v) => sum + v, 0) / n
  const meanY = samples.reduce((sum, { tempC }) => sum + tempC, 0) / n
  let xx = 0
  let xy = 0
  let yy = 0
  samples.forEach(({ tempC }, i) => {
    const dx = (x[i] as number) - meanX
    xx += dx * dx
    xy += dx * (tempC - meanY)
    yy += (tempC - meanY) ** 2
  })
  const slope = xx > 0 ? xy / xx : 0
  return { slope, offset: meanY - slope * meanX, squares: yy - slope * xy }
}
