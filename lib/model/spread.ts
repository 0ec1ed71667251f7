/** What we do not know of a cook, and one member's draw from it. */
import type { CookerHabits } from './cooker'
import type { Drift } from './cooker-path'
import { type Chance, chanceOf } from './random'

/**
 * Priors, each a centre with a spread: `log` multiplies by e^(sd·z), the others add sd·z. Centres of the skin law and of the
 * yield are fitted to the ten calibration rows of the open roasting timetables, the five losses of the handbook and one slow
 * shoulder (tests/fixtures/published/roasting-times.json names them) [own-fit]; spreads are engineering judgement [estimate].
 */
export const PRIORS = {
  /** Convection in a still oven, W/m²K. [own-fit] */
  h: { centre: 13, log: 0.25 },
  emissivity: { centre: 0.87, sd: 0.06 },
  /** Vapour in the cooker, Pa. [own-trial] */
  vapour: { centre: 6300, log: 0.5 },
  /**
   * What each kg/m² dried out of the skin holds back. Heat: a crust of 0.1 W/mK, 410 kg/m³ of water gone from it [estimate].
   * Vapour: [own-fit], as if it were a fiftieth as open as air.
   */
  crustHeat: { centre: 0.0244, log: 0.25 },
  crustVapour: { centre: 5700, log: 0.35 },
  /** Over the yield of the cut; of its juice, what feeds the skin and does not run out at the cut ends. [own-fit] */
  juice: { log: 0.15 },
  feed: { centre: 0.4, sd: 0.1 },
  /** Over the Choi-Okos conductivity of the raw composition, which then falls with the juice. */
  k: { centre: 1, log: 0.07 },
  rhoC: { centre: 1, log: 0.035 },
  startC: { sd: 2 },
  /**
   * What the model as a whole leaves out: the meat's clock against ours. With it a forecast of a table's roast is as wide as the
   * tables scatter about the likely member: tests/reference/width.test.ts.
   */
  time: { log: 0.1 },
  warmUp: { log: 0.2 },
  climb: { log: 0.25 },
  /** Heat that the cooker loses, over its habits': wear, gaskets, ash. [estimate] */
  loss: { log: 0.2 },
  /** From pull to the vents, or the dial, turned: s. */
  ventDelay: { centre: 45, log: 0.5 },
  /** Probe off the coldest line: uniform from 0, share of the half thickness. */
  probeOffset: { most: 0.45 },
  probeBiasK: { sd: 0.7 },
  restAirK: { sd: 2 },
} as const
/**
 * h, k and the crust's vapour trade against each other in every fit (more heat in, and a crust that lets more vapour out,
 * leave the times as they were), so a common draw carries part of each: these are correlations with it.
 */
const SHARED = { h: 0.6, k: 0.7, crustVapour: -0.8 } as const
/** A crust that is thicker for its water holds back more of both: correlation of its heat with its vapour. [estimate] */
const CRUST = 0.8

export interface Member {
  readonly thicknessFactor: number
  readonly startC: number
  readonly h_WpM2K: number
  readonly hFactor: number
  readonly emissivity: number
  readonly vapourPa: number
  readonly crustHeat_M4KpWKg: number
  readonly crustVapour_M4SpKg2: number
  readonly juiceFactor: number
  readonly feedShare: number
  readonly kFactor: number
  readonly rhoCFactor: number
  readonly timeFactor: number
  readonly levelK: number
  readonly warmUpS: number
  readonly climbFactor: number
  readonly lossFactor: number
  /** Where in its swing the thermostat stands at meat-on, share of a period. */
  readonly cyclePhase: number
  readonly ventDelayS: number
  readonly probeOffset: number
  readonly probeBiasK: number
  readonly restAirK: number
  /** The cooker's own stream, for its drift. */
  readonly drift: Drift
  /** What readings leave open of the probe is settled in the midst of the cook. */
  readonly settles?: Settles
}
/** Asked once at a time, with what the probe has read by then: what it is off by from then on, K. */
export interface Settles {
  readonly atS: number
  readonly offK: (readAt: (timeS: number) => number) => number
}
export interface MemberInput {
  readonly startC: number
  readonly thicknessSpread: number
  readonly habits: CookerHabits
}

const PARAMETERS = 1
const DRIFT = 2
const COOKER = 3
/** Raw meat below this is frozen in part, which the model does not know. */
const COLDEST_START_C = -1

/** What a member is drawn from: standard normals, and two shares from 0 to 1. */
export const NORMALS = [
  'shared',
  'crust',
  'h',
  'thickness',
  'start',
  'k',
  'emissivity',
  'vapour',
  'crustHeat',
  'juice',
  'feed',
  'rhoC',
  'time',
  'level',
  'warmUp',
  'climb',
  'loss',
  'ventDelay',
  'probeBias',
  'restAir',
] as const
export type NormalName = (typeof NORMALS)[number]
export type Latents = Record<NormalName, number> & { cyclePhase: number; probeAt: number }

/** Draws of member `m` of the ensemble of a seed. They depend on nothing else, so 256 members are the first of 2,000. */
export function drawLatents(seed: number, m: number): Latents {
  const chance = chanceOf(seed, m, PARAMETERS)
  const ofCooker = chanceOf(seed, m, COOKER)
  // evaluated in this order: it says which member draws what
  return {
    shared: chance.normal(),
    crust: chance.normal(),
    h: chance.normal(),
    thickness: chance.normal(),
    start: chance.normal(),
    k: chance.normal(),
    emissivity: chance.normal(),
    vapour: chance.normal(),
    crustHeat: chance.normal(),
    juice: chance.normal(),
    feed: chance.normal(),
    rhoC: chance.normal(),
    time: chance.normal(),
    level: chance.normal(),
    warmUp: chance.normal(),
    climb: chance.normal(),
    loss: ofCooker.normal(),
    cyclePhase: ofCooker.uniform(),
    ventDelay: chance.normal(),
    probeAt: chance.uniform(),
    probeBias: chance.normal(),
    restAir: chance.normal(),
  }
}
export const driftOf = (seed: number, m: number): Chance => chanceOf(seed, m, DRIFT)

/** `as` makes values of a cooker that is remembered out of the draws. */
export const drawMember = (seed: number, m: number, input: MemberInput, as = (draws: Latents) => draws): Member =>
  memberOf(as(drawLatents(seed, m)), input, driftOf(seed, m))

/** The member that draws come to. */
export function memberOf(z: Latents, { startC, thicknessSpread, habits }: MemberInput, drift: Drift): Member {
  const log = ({ centre = 1, log: sd }: { centre?: number; log: number }, normal: number) =>
    centre * Math.exp(sd * normal)
  const tied = (share: number, own: number) => share * z.shared + Math.sqrt(1 - share * share) * own
  const crust = tied(SHARED.crustVapour, z.crust)
  const hFactor = Math.exp(PRIORS.h.log * tied(SHARED.h, z.h))
  return {
    thicknessFactor: Math.exp(thicknessSpread * z.thickness),
    startC: Math.max(COLDEST_START_C, startC + PRIORS.startC.sd * z.start),
    hFactor,
    h_WpM2K: PRIORS.h.centre * habits.hFactor * hFactor,
    kFactor: log(PRIORS.k, tied(SHARED.k, z.k)),
    crustVapour_M4SpKg2: log(PRIORS.crustVapour, crust),
    emissivity: Math.min(0.98, PRIORS.emissivity.centre + PRIORS.emissivity.sd * z.emissivity),
    vapourPa: Math.min(40_000, log(PRIORS.vapour, z.vapour)),
    crustHeat_M4KpWKg: log(PRIORS.crustHeat, CRUST * crust + Math.sqrt(1 - CRUST * CRUST) * z.crustHeat),
    juiceFactor: log(PRIORS.juice, z.juice),
    feedShare: Math.min(1, Math.max(0, PRIORS.feed.centre + PRIORS.feed.sd * z.feed)),
    rhoCFactor: log(PRIORS.rhoC, z.rhoC),
    timeFactor: log(PRIORS.time, z.time),
    levelK: habits.levelSdK * z.level,
    warmUpS: habits.warmUpMin * 60 * Math.exp(warmUpLog(habits) * z.warmUp),
    climbFactor: log(PRIORS.climb, z.climb),
    lossFactor: log(PRIORS.loss, z.loss),
    cyclePhase: z.cyclePhase,
    ventDelayS: log(PRIORS.ventDelay, z.ventDelay),
    probeOffset: PRIORS.probeOffset.most * z.probeAt,
    probeBiasK: PRIORS.probeBiasK.sd * z.probeBias,
    restAirK: PRIORS.restAirK.sd * z.restAir,
    drift,
  }
}

/** The likely member in a still oven: every prior at its middle, the probe at the coldest point. */
export const CENTRAL: Omit<Member, 'startC' | 'h_WpM2K' | 'warmUpS' | 'drift'> = {
  thicknessFactor: 1,
  hFactor: 1,
  emissivity: PRIORS.emissivity.centre,
  vapourPa: PRIORS.vapour.centre,
  crustHeat_M4KpWKg: PRIORS.crustHeat.centre,
  crustVapour_M4SpKg2: PRIORS.crustVapour.centre,
  juiceFactor: 1,
  feedShare: PRIORS.feed.centre,
  kFactor: PRIORS.k.centre,
  rhoCFactor: 1,
  timeFactor: 1,
  levelK: 0,
  climbFactor: 1,
  lossFactor: 1,
  cyclePhase: 0,
  ventDelayS: PRIORS.ventDelay.centre,
  probeOffset: 0,
  probeBiasK: 0,
  restAirK: 0,
}
/** The likely member in a cooker, without drift: the model's own trend, for tests and for reading it. */
export const centralMember = (startC: number, habits: CookerHabits): Member => ({
  ...CENTRAL,
  startC,
  h_WpM2K: PRIORS.h.centre * habits.hFactor,
  warmUpS: habits.warmUpMin * 60,
  drift: { uniform: () => 0.5, normal: () => 0 },
})

/** Share of warm-ups that are done within the lead planned for them. */
const LEAD_Z = 1.645
/** Time to plan for warming up: 95 % of members' and ten steady minutes, rounded up to five. */
export const warmUpLeadS = (habits: CookerHabits, steadyForS: number) =>
  Math.ceil((habits.warmUpMin * 60 * Math.exp(warmUpLog(habits) * LEAD_Z) + steadyForS) / 300) * 300
const warmUpLog = (habits: CookerHabits) => habits.warmUpLog ?? PRIORS.warmUp.log
