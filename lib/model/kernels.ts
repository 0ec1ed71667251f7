/** The kernels: who takes the members of an ensemble through their cooks. They agree to 0.06 °C and 5 s. */
import { simulateEight } from './simd/eight'
import { hasSimd } from './simd/kernel'
import { type Run, type Setting, simulate } from './simulate'
import type { Member } from './spread'

/** One roast at a time in double precision, or eight side by side in single. */
export const KERNELS = ['plain', 'simd'] as const
export type KernelName = (typeof KERNELS)[number]

export type CookAll = (setting: Setting, members: readonly Member[]) => readonly Run[]
export const cookAllBy = (kernel: KernelName): CookAll =>
  kernel === 'simd'
    ? (setting, members) => simulateEight(setting, members)
    : (setting, members) => members.map((member) => simulate(setting, member))

/** The faster one that runs here. */
export const fastestKernel = (): KernelName => (hasSimd() ? 'simd' : 'plain')
