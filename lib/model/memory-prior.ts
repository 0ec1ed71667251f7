/**
 * The prior of a cook in a cooker that is remembered: what belongs to the cooker is known as the memory has it, what differs from
 * cook to cook stays as wide as it was. Without a memory every draw is a standard normal.
 */
import type { CookerPlan } from './cook'
import { COOKERS, type CookerHabits } from './cooker'
import type { Belief, CookerMemory } from './cooker-memory'
import type { FittedName } from './fitted'
import { type Latents, NORMALS, type NormalName, PRIORS } from './spread'

/**
 * Share of each draw's variance that is the cooker's, or its crew's, and so the same in its next cook: about what three lessons
 * were worth for the fourth cook of forty made-up cookers of seed 2. [own-trial] The level also hangs on where the meat lies and how
 * the fire was laid. What is not named here is the meat's and the day's.
 */
export const BELONGS = {
  level: 0.8,
  h: 0.6,
  vapour: 0.4,
  emissivity: 0.4,
  shared: 0.2,
  time: 0.2,
} as const satisfies Partial<Record<NormalName, number>>
/** What a memory holds as the pace of roasts. */
export const PACE_NAMES = [
  'h',
  'vapour',
  'emissivity',
  'shared',
  'time',
] as const satisfies readonly (keyof typeof BELONGS)[]
/** From one cook to the next a warm-up differs by this, in the logarithm. [estimate] */
export const WARM_UP_EACH = 0.12

export interface Prior {
  readonly at: (name: FittedName) => Belief
  /** The values that standard normal draws come to. */
  readonly of: (draws: Latents) => Latents
  /** The pace as the level leaves it: applied to values, last. */
  readonly tied: (values: Latents) => Latents
}
const STANDARD: Belief = { mean: 0, sd: 1 }
const PLAIN: Prior = { at: () => STANDARD, of: (draws) => draws, tied: (values) => values }

/** How its kind behaves, with what is known of this one's warming up. */
export function habitsOf({ kind, memory }: Pick<CookerPlan, 'kind' | 'memory'>): CookerHabits {
  const { warmUp } = memory ?? {}
  if (warmUp === undefined) return COOKERS[kind]
  const warmUpLog = Math.hypot(warmUp.sd / warmUp.mean, WARM_UP_EACH)
  return { ...COOKERS[kind], warmUpMin: warmUp.mean / 60, warmUpLog }
}

export function priorOf({ kind, memory }: Pick<CookerPlan, 'kind' | 'memory'>): Prior {
  if (memory === undefined) return PLAIN
  const known = knownOf(memory, COOKERS[kind])
  const at = (name: FittedName) => known.at[name as NormalName] ?? STANDARD
  const of = (draws: Latents) => {
    const values = { ...draws }
    for (const name of NORMALS) {
      const { mean, sd } = at(name)
      values[name] = mean + sd * draws[name]
    }
    return values
  }
  const level = at('level').mean
  return { at, of, tied: (z) => ({ ...z, time: z.time + known.timePerLevel * (z.level - level) }) }
}

function knownOf({ level, pace, tie = 0 }: CookerMemory, { levelSdK }: CookerHabits) {
  const at: Partial<Record<NormalName, Belief>> = {}
  for (const name of PACE_NAMES) at[name] = { mean: 0, sd: Math.sqrt(1 - BELONGS[name]) }
  const levelVarianceK2 = level.sd ** 2 + (1 - BELONGS.level) * levelSdK ** 2
  if (levelSdK > 0) at.level = { mean: level.mean / levelSdK, sd: Math.sqrt(levelVarianceK2) / levelSdK }
  // of the level only the cooker's own part is tied to the pace
  const tiedShare = levelVarianceK2 > 0 ? (tie * level.sd) ** 2 / levelVarianceK2 : 0
  const paceVariance = pace.sd ** 2 * (1 - tiedShare)
  const timeLog = PRIORS.time.log
  at.time = { mean: pace.mean / timeLog, sd: Math.sqrt(1 - BELONGS.time + paceVariance / timeLog ** 2) }
  const perK = levelVarianceK2 > 0 ? (tie * level.sd * pace.sd) / levelVarianceK2 : 0
  return { at, timePerLevel: (perK * levelSdK) / timeLog }
}
