/** What readings say is going wrong, each with the one thing to do about it. Limits are estimates of ours. [estimate] */
import {
  type Celsius,
  celsius,
  formatDuration,
  formatRise,
  formatTemp,
  kelvins,
  seconds,
  type UnitSystem,
} from '../units'
import type { Sample } from './readings'

export const TROUBLES = [
  'probe-out',
  'probe-on-bone',
  'lid-left-open',
  'fire-dying',
  'cooker-off-plan',
  'thawing-core',
  'stall',
] as const
export type Trouble = (typeof TROUBLES)[number]
export interface Watched {
  readonly code: Trouble
  readonly sentence: string
  readonly action: string
}
export interface WatchInput {
  readonly core: readonly Sample[]
  readonly cooker: readonly Sample[]
  readonly nowS: number
  /** What the cooker is set to now, and since when; none where nothing burns for the meat any more. */
  readonly aim: { readonly tempC: number; readonly sinceS: number } | undefined
  readonly airC: number
  readonly targetC: number | undefined
  /** What the probe was likely to read now before any reading: 1 and 99 %. */
  readonly likely: { readonly lowC: number; readonly highC: number } | undefined
  /** Openings of the lid that are planned, or marked. */
  readonly lid: readonly (readonly [number, number])[]
  readonly burns: boolean
}

/** All troubles that show now, the most pressing first. */
export function watchReadings(input: WatchInput, units: UnitSystem = 'metric'): Watched[] {
  const out = probeOut(input, units)
  const probe = out ? [out] : [onBone(input, units), thawing(input, units), stalled(input, units)]
  const cooker = [lidOpen(input, units) ?? dying(input, units) ?? offPlan(input, units)]
  return [...probe, ...cooker]
    .filter((found) => found !== undefined)
    .sort((a, b) => TROUBLES.indexOf(a.code) - TROUBLES.indexOf(b.code))
}

const since = (samples: readonly Sample[], fromS: number, toS: number) =>
  samples.filter(({ timeS }) => timeS >= fromS && timeS <= toS)
const temp = (tempC: number, units: UnitSystem) => formatTemp(celsius(tempC), units)

/** Meat thicker than a finger warms no faster at its probe; a probe in air does. */
const MEAT_MOST_KPS = 4 / 60
const JUMP_K = 6
/** A jump counts for so long, until readings have come back to where they were going. */
const JUMP_WITHIN_S = 1200
const GAP_S = 300
export function probeOut({ core, nowS }: WatchInput, units: UnitSystem = 'metric'): Watched | undefined {
  const jump = jumpIn(core, nowS)
  if (jump === undefined) return undefined
  return {
    code: 'probe-out',
    sentence: `The probe went from ${temp(jump.fromC, units)} to ${temp(jump.toC, units)} within ${formatDuration(seconds(Math.max(60, jump.inS)))}, faster than meat can: it is out of the meat.`,
    action: 'Put the probe back into the thickest place, and mark that it is in.',
  }
}
interface Jump {
  readonly atS: number
  readonly fromC: number
  readonly toC: number
  readonly inS: number
}
/** The last jump from which readings have not come back. */
function jumpIn(core: readonly Sample[], nowS: number): Jump | undefined {
  let jump: Jump | undefined
  for (let i = 1; i < core.length; i++) {
    const before = core[i - 1] as Sample
    const here = core[i] as Sample
    if (jump && Math.abs(here.tempC - jump.fromC) < JUMP_K / 2 + (here.timeS - jump.atS) * (MEAT_MOST_KPS / 4))
      jump = undefined
    const inS = here.timeS - before.timeS
    const byK = Math.abs(here.tempC - before.tempC)
    if (!jump && inS <= GAP_S && byK >= Math.max(JUMP_K, inS * MEAT_MOST_KPS))
      jump = { atS: before.timeS, fromC: before.tempC, toC: here.tempC, inS }
  }
  return jump && nowS - jump.atS <= JUMP_WITHIN_S ? jump : undefined
}
/** The readings without those taken while the probe was out of the meat. */
export function insideMeat(core: readonly Sample[]): Sample[] {
  let out: Sample | undefined
  const kept: Sample[] = []
  for (const here of core) {
    const before = kept.at(-1)
    if (before !== undefined) {
      const inS = here.timeS - before.timeS
      const byK = Math.abs(here.tempC - before.tempC)
      out = byK >= Math.max(JUMP_K, inS * MEAT_MOST_KPS) ? here : undefined
    }
    if (out === undefined) kept.push(here)
  }
  return kept
}

const BONE_OVER_K = 6
/** A probe is where it is for so long before it is said to stand wrongly. */
const SETTLED_S = 300
export function onBone({ core, nowS, likely }: WatchInput, units: UnitSystem = 'metric'): Watched | undefined {
  const last = since(core, nowS - SETTLED_S, nowS)
  const first = core[0]
  if (likely === undefined || last.length < 2 || first === undefined || nowS - first.timeS < SETTLED_S) return undefined
  const now = middle(last)
  if (now <= likely.highC + BONE_OVER_K) return undefined
  return {
    code: 'probe-on-bone',
    sentence: `The probe reads ${temp(now, units)} where at most ${temp(likely.highC, units)} was likely: its tip touches bone, or lies near the surface.`,
    action: 'Draw the probe back and set its tip in the thickest meat, clear of bone.',
  }
}

const STALL_OVER_S = 2400
const STALL_KPS = 3 / 3600
const STALL_BETWEEN_C = [55, 88] as const
export function stalled({ core, nowS, targetC }: WatchInput, units: UnitSystem = 'metric'): Watched | undefined {
  const last = since(core, nowS - STALL_OVER_S, nowS)
  const [first] = last
  if (first === undefined || nowS - first.timeS < 0.9 * STALL_OVER_S || last.length < 5) return undefined
  const now = middle(last.slice(-3))
  if (now < STALL_BETWEEN_C[0] || now > STALL_BETWEEN_C[1] || (targetC !== undefined && now >= targetC - 1))
    return undefined
  if (Math.abs(slopeKps(last)) > STALL_KPS) return undefined
  return {
    code: 'stall',
    sentence: `The probe has stood at ${temp(now, units)} for ${formatDuration(seconds(Math.round((nowS - first.timeS) / 60) * 60))}: what dries off the skin takes all the heat.`,
    action: 'Wait it out, or wrap the meat; do not stoke the fire.',
  }
}

const FROZEN_BELOW_C = 1.5
const FROZEN_FOR_S = 1200
const FROZEN_RISE_K = 0.8
export function thawing({ core, nowS }: WatchInput, units: UnitSystem = 'metric'): Watched | undefined {
  const last = since(core, nowS - FROZEN_FOR_S, nowS)
  const [first] = last
  if (first === undefined || nowS - first.timeS < 0.9 * FROZEN_FOR_S || last.length < 3) return undefined
  const now = middle(last.slice(-3))
  if (now > FROZEN_BELOW_C || now - first.tempC > FROZEN_RISE_K) return undefined
  return {
    code: 'thawing-core',
    sentence: `The probe has stood at ${temp(now, units)} for ${formatDuration(seconds(Math.round((nowS - first.timeS) / 60) * 60))}: the middle is still frozen.`,
    action: 'Leave the meat where it is and plan for a later pull: thawing takes as much heat as warming by 70 °C.',
  }
}

/** A lid is off for a minute or two; the air falls by a third of its excess within the first. */
const FALL_SHARE = 0.25
const LID_LOOK_S = 900
const LID_MOST_S = 180
const BACK_SHARE = 0.2
export function lidOpen({ cooker, nowS, airC, lid }: WatchInput, units: UnitSystem = 'metric'): Watched | undefined {
  const last = since(cooker, nowS - LID_LOOK_S, nowS)
  const now = last.at(-1)
  if (now === undefined) return undefined
  for (let i = last.length - 1; i > 0; i--) {
    const before = last[i - 1] as Sample
    const low = last[i] as Sample
    const fallK = before.tempC - (last[Math.min(last.length - 1, i + 1)] as Sample).tempC
    const excessK = before.tempC - airC
    if (!(fallK > FALL_SHARE * excessK && excessK > 40)) continue
    // by readings alone: a single low one, however long ago, may be a lid that was off for a minute
    const openS = now.timeS - low.timeS
    const planned = lid.some(([from, to]) => from - 120 <= low.timeS && nowS <= to + LID_MOST_S)
    const back = now.tempC - (before.tempC - fallK) > BACK_SHARE * fallK
    if (openS < LID_MOST_S || planned || back) return undefined
    return {
      code: 'lid-left-open',
      sentence: `The cooker fell from ${temp(before.tempC, units)} to ${temp(now.tempC, units)} at once, ${formatDuration(seconds(Math.round((nowS - low.timeS) / 60) * 60))} ago, and has not come back: the lid is open.`,
      action: 'Shut the lid.',
    }
  }
  return undefined
}

/**
 * A fire drifts by a dozen degrees within a quarter of an hour and comes back; one that dies falls on, and below where it has
 * stood: a cooker that always runs under its dial is not dying.
 */
const DYING_OVER_S = 2100
const DYING_KPS = -20 / 3600
const DYING_STEP_K = 1.5
const DYING_BELOW_K = 20
/** Where it stands counts once it has had so long to come there. */
const STANDS_AFTER_S = 900
const STANDS_LEAST = 5
const DYING_PARTS = [0, 1, 2, 3] as const
/** After a lid the air is not yet what the fire makes it. */
const LID_BACK_S = 360
export function dying(
  { cooker, nowS, aim, burns, lid }: WatchInput,
  units: UnitSystem = 'metric',
): Watched | undefined {
  if (aim === undefined || !burns || nowS - aim.sinceS < DYING_OVER_S) return undefined
  const shut = cooker.filter(({ timeS }) => !lid.some(([from, to]) => from <= timeS && timeS <= to + LID_BACK_S))
  const last = since(shut, nowS - DYING_OVER_S, nowS)
  const [first] = last
  if (first === undefined || nowS - first.timeS < 0.8 * DYING_OVER_S || last.length < 8) return undefined
  const quarter = last.length / 4
  const parts = DYING_PARTS.map((n) => middle(last.slice(Math.floor(n * quarter), Math.floor((n + 1) * quarter))))
  const [from, to] = [parts[0] as Celsius, parts[3] as Celsius]
  const falls = parts.every((part, n) => n === 0 || (parts[n - 1] as number) - part > DYING_STEP_K)
  const stood = since(shut, aim.sinceS + STANDS_AFTER_S, nowS - DYING_OVER_S - 1)
  const usualC = stood.length < STANDS_LEAST ? aim.tempC : middle(stood)
  if (!falls || slopeKps(last) > DYING_KPS || to > usualC - DYING_BELOW_K) return undefined
  return {
    code: 'fire-dying',
    sentence: `The cooker has fallen from ${temp(from, units)} to ${temp(to, units)} in the last ${formatDuration(seconds(DYING_OVER_S))} and goes on falling: the fire is dying.`,
    action: 'Add fuel and open the lower vents.',
  }
}

const OFF_OVER_S = 1200
const OFF_K = 25
export function offPlan({ cooker, nowS, aim }: WatchInput, units: UnitSystem = 'metric'): Watched | undefined {
  if (aim === undefined || nowS - aim.sinceS < 2 * OFF_OVER_S) return undefined
  const last = since(cooker, nowS - OFF_OVER_S, nowS)
  if (last.length < 4) return undefined
  const offK = middle(last) - aim.tempC
  if (Math.abs(offK) < OFF_K) return undefined
  const rise = formatRise(kelvins(Math.abs(offK)), units)
  return {
    code: 'cooker-off-plan',
    sentence: `The cooker has run ${rise} ${offK > 0 ? 'over' : 'under'} the ${temp(aim.tempC, units)} of the plan for ${formatDuration(seconds(OFF_OVER_S))}.`,
    action:
      offK > 0 ? 'Turn it down, or give the plan the heat it has.' : 'Turn it up, or give the plan the heat it has.',
  }
}

function middle(samples: readonly Sample[]): Celsius {
  const sorted = samples.map(({ tempC }) => tempC).sort((a, b) => a - b)
  return celsius(sorted[Math.floor(sorted.length / 2)] ?? Number.NaN)
}
/** Least squares, K/s. */
function slopeKps(samples: readonly Sample[]): number {
  const n = samples.length
  const meanS = samples.reduce((sum, { timeS }) => sum + timeS, 0) / n
  const meanC = samples.reduce((sum, { tempC }) => sum + tempC, 0) / n
  let [xx, xy] = [0, 0]
  for (const { timeS, tempC } of samples) {
    xx += (timeS - meanS) ** 2
    xy += (timeS - meanS) * (tempC - meanC)
  }
  return xx > 0 ? xy / xx : 0
}
