/** One member's roast on its march through time, as the stages see it, whichever kernel takes the steps. */
import { type Mesh, radialMesh } from './conduction'
import { Cooker } from './cooker-path'
import type { Watch } from './crossing'
import { fireIn } from './fire'
import { warmUpFuelKg } from './fuel'
import { type Place, placeIn } from './meat'
import { type Run, SAMPLE_S, type Setting } from './simulate'
import type { Member } from './spread'
import type { Stand } from './stand'
import type { Skin } from './surface'

/** One leg of the march: nothing is done to the cooker or the meat until its end. */
export interface Leg {
  readonly untilS: number
  /** Steps end on whole multiples of this. */
  readonly gridS: number
  readonly stand: Stand
  /** The leg ends earlier where the probe passes this level. */
  readonly probe: Watch | undefined
  /** The leg ends earlier at the peak of the core. */
  readonly toPeak: boolean
}
export interface Peak {
  readonly timeS: number
  readonly tempC: number
}
export interface Roast {
  readonly body: Body
  readonly timeS: number
  readonly coreC: number
  /** What the probe reads, or would read were it in. */
  readonly probeC: number
  /** What the probe read at a time until now, and what it is off by from now on. */
  readonly readAt: (timeS: number) => number
  offProbe(byK: number): void
  /** From now on the core's peak is looked for. */
  seekPeak(): void
  readonly peak: Peak | undefined
  /** Temperatures of the nodes now, centre first. */
  nodesC(): Float64Array
  /** What the roast has come to by now. */
  slice(): Sliced
  /** Samples so far, one minute apart from meat-on. */
  trace(): Run['trace']
}
export type Sliced = Pick<Run, 'lossFrac' | 'lethalityLog' | 'lethalityAt' | 'peakC' | 'slicedC' | 'place' | 'exponent'>

/** Between samples a minute apart, and from the last of them to what is read now. */
export function readBetween(sampleAt: (n: number) => number, count: number, nowS: number, nowC: number, timeS: number) {
  const n = Math.min(count - 1, Math.max(0, Math.floor(timeS / SAMPLE_S)))
  const fromS = n * SAMPLE_S
  const fromC = sampleAt(n)
  const [toS, toC] = n + 1 < count ? [fromS + SAMPLE_S, sampleAt(n + 1)] : [nowS, nowC]
  return toS > fromS ? fromC + Math.min(1, Math.max(0, (timeS - fromS) / (toS - fromS))) * (toC - fromC) : fromC
}

/** What is fixed of a member's roast. */
export interface Body {
  readonly mesh: Mesh
  readonly radiusM: number
  readonly skin: Skin
  readonly probe: Place
}
export function bodyOf(setting: Setting, member: Member): Body {
  const { radiusM, exponent } = setting.radialAt(member.thicknessFactor)
  const mesh = radialMesh(exponent, setting.nodes)
  const skin = { ...member, dryableKgpM2: (setting.matter.dryableKgpM3 * radiusM) / (exponent + 1) }
  return { mesh, radiusM, skin, probe: placeIn(mesh, member.probeOffset) }
}

/** Mean over the volume. */
export const meanOf = ({ cell, exponent }: Mesh, nodesC: Float64Array) =>
  (exponent + 1) * nodesC.reduce((sum, tempC, i) => sum + tempC * (cell[i] as number), 0)

/** What a column of nodes has been through, as a slice shows it. */
export function slicedOf(
  { mesh }: Body,
  nodesC: Float64Array,
  peakC: Float64Array,
  logKill: Float64Array,
  lossFrac: number,
) {
  const lethalityLog = logKill.reduce((least, log) => Math.min(least, log), Infinity)
  const lethalityAt = mesh.place[logKill.indexOf(lethalityLog)] as number
  const { place, exponent } = mesh
  return { lossFrac, lethalityLog, lethalityAt, peakC, slicedC: nodesC, place, exponent }
}

/** The member's cooker at meat-on, and the fuel it has burnt by then. */
export interface MemberFire {
  readonly cooker: Cooker
  readonly litKg: number
}
export function memberFire({ course, habits, site }: Setting, member: Member): MemberFire {
  const fire = fireIn(habits, site.airC, course, member)
  const wantedKg = member.lossFactor * warmUpFuelKg(habits, site, course.preheatC - site.airC, fire)
  const litKg = Math.min(site.fuelKg, wantedKg)
  const left = { ...site, fuelKg: site.fuelKg - litKg }
  const of = { ...member, chance: member.drift }
  return { cooker: new Cooker(habits, of, left, course.preheatC, course.cold), litKg }
}
