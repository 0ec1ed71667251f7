/** The thermal moments, in reading order. All but `turn` and `carryover-peak` form a chain in time, in every member. */
export const MOMENT_IDS = [
  'fire-lit',
  'cooker-steady',
  'meat-on',
  'turn',
  'probe-in',
  'pull',
  'vents-open',
  'sear-start',
  'off-heat',
  'carryover-peak',
  'first-slice',
] as const
export type MomentId = (typeof MOMENT_IDS)[number]
