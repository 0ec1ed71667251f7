/** What of a member is fitted to readings, and members at values of it. */
import { type Latents, NORMALS, type NormalName } from './spread'

export type FittedName = NormalName | 'probeAt'
/** Fitted as soon as they tell on the probe; others once what they govern has begun. */
export const ALWAYS_FITTED: readonly FittedName[] = [
  'time',
  'thickness',
  'start',
  'shared',
  'h',
  'k',
  'crust',
  'crustHeat',
  'emissivity',
  'vapour',
  'juice',
  'feed',
  'rhoC',
  'level',
  'probeAt',
  'probeBias',
]

/** The member in the middle of all draws. */
export const MIDDLE: Latents = {
  ...(Object.fromEntries(NORMALS.map((name) => [name, 0])) as Record<NormalName, number>),
  cyclePhase: 0,
  probeAt: 0.5,
}
/** `values` in standard deviations, that of the probe's place too. */
export function withValues(base: Latents, names: readonly FittedName[], values: Float64Array): Latents {
  const z = { ...base }
  names.forEach((name, i) => {
    z[name] = name === 'probeAt' ? normalShare(values[i] as number) : (values[i] as number)
  })
  return z
}
export const valuesOf = (z: Latents, names: readonly FittedName[]) =>
  Float64Array.from(names, (name) => (name === 'probeAt' ? probit(z.probeAt) : z[name]))

/** The normal distribution's share below x, to 1e-7 (Abramowitz and Stegun 26.2.17), and its inverse. */
function normalShare(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x))
  const tail =
    (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  return x > 0 ? 1 - tail : tail
}
function probit(share: number): number {
  let [low, high] = [-5, 5]
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    if (normalShare(middle) < share) low = middle
    else high = middle
  }
  return (low + high) / 2
}
