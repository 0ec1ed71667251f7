/** Family A: the real solid in 3-D with sides, matter and skin other than told, driven by its own history at the wet front. */

import { endedAt } from '../../lib/model/as-it-went'
import type { CookPlan } from '../../lib/model/cook'
import { cookCells } from '../../lib/model/cook-cells'
import { COOKERS } from '../../lib/model/cooker'
import type { Course } from '../../lib/model/course'
import type { Cut } from '../../lib/model/cut'
import { cutCells } from '../../lib/model/cut-cells'
import { cutById } from '../../lib/model/cuts'
import { prepared } from '../../lib/model/forecast-cook'
import { cookAllBy } from '../../lib/model/kernels'
import type { Chance } from '../../lib/model/random'
import { settingOf } from '../../lib/model/setting'
import { geometryOf } from '../../lib/model/shape'
import { type Run, type Setting, simulate } from '../../lib/model/simulate'
import { drawLatents, driftOf, type Latents, type Member, memberOf } from '../../lib/model/spread'
import { boilingC } from '../../lib/model/vapour'
import { metres } from '../../lib/units'
import { between, fadingKg, firstAbove, planOf, readingsOf, type Twin, type TwinKind, targetOf } from './twin'

const CELL_M = 0.009
/** About what warming up has burnt by meat-on. */
const WARMED_UP_KG = 0.4
export function solidTwin(kind: TwinKind, n: number, seed: number, chance: Chance): Twin | undefined {
  const z = drawLatents(seed + 77, 5000 + n)
  const plan = planOf(kind, n, chance)
  return solidCook(plan, { z, drift: () => driftOf(seed + 77, 5000 + n), fades: kind === 'fuel-fade' }, chance)
}

/** Who cooks: the draws of the member that the truth is shifted from, its drift, and whether its fuel runs low. */
export interface Hidden {
  readonly z: Latents
  readonly drift: () => Chance
  readonly fades: boolean
}
export interface SolidTwin extends Twin {
  /** The roast's own, m. */
  readonly sides: { readonly thickness: number; readonly width: number; readonly length: number }
}
/** A made-up cook of a plan; nothing where it never comes to its pull. */
export function solidCook(plan: CookPlan, hidden: Hidden, chance: Chance): SolidTwin | undefined {
  const told = prepared(plan, 0, cookAllBy('simd')).course
  const probeInS = told.probeInS ?? 0
  const truth = truthOf(plan, hidden, chance)
  const whole = truth.cook(longRoast(told, truth.likelyPullS * 1.7))
  const pullS = firstAbove(whole.probeC, targetOf(plan), Math.max(60, probeInS))
  if (!Number.isFinite(pullS)) return undefined
  const stages = told.stages.map((stage, i) => (i === told.pullStage ? endedAt(stage, pullS) : stage))
  const cooked = truth.cook({ ...told, stages })
  const sensorK = 0.6 * truth.member.levelK + 5 * chance.normal()
  const sliceS = cooked.run.moments['first-slice']
  const readings = readingsOf(chance, {
    fromS: probeInS,
    untilS: pullS,
    coreC: (timeS) => between(whole.probeC, timeS),
    cookerC: (timeS) => between(whole.run.trace.cookerC, timeS) + sensorK,
  })
  return {
    plan,
    readings,
    marks: [],
    probeInS,
    pullS,
    sliceS,
    sliceCoreC: cooked.sliceCoreC,
    sliceProbeC: cooked.sliceProbeC,
    sides: truth.sides,
  }
}

const longRoast = (told: Course, forS: number): Course => ({
  ...told,
  stages: told.stages
    .slice(0, told.pullStage + 1)
    .map((stage, i) => (i === told.pullStage ? endedAt(stage, forS) : stage)),
})

function truthOf(plan: CookPlan, { z, drift, fades }: Hidden, chance: Chance) {
  const told = cutById(plan.roast.cut) as Cut
  const other = (sd: number) => Math.exp(sd * chance.normal())
  const cut: Cut = {
    ...told,
    widthPerThickness: told.widthPerThickness * other(0.08),
    exponents: told.exponents.map((p) => (Number.isFinite(p) ? p * other(0.12) : p)) as unknown as Cut['exponents'],
  }
  const typical = geometryOf(cut, plan.roast.mass)
  const thickness = metres(typical.thicknessM * other(typical.thicknessSpread))
  const geometry = geometryOf(cut, plan.roast.mass, { thickness })
  const habits = COOKERS[plan.cooker.kind]
  // other parameters than the forecaster's: drawn wider about shifted centres
  const shifted = {
    ...z,
    h: z.h - 0.7,
    crust: 1.2 * z.crust + 0.5,
    k: 1.2 * z.k + 0.4,
    emissivity: z.emissivity + 0.5,
    time: 0,
    thickness: 0,
  }
  const input = { startC: plan.roast.start, thicknessSpread: 0, habits }
  const member = (): Member => memberOf(shifted, input, drift())
  const base = settingOf(plan, cut, geometry)
  const setting: Setting = {
    ...base,
    radialAt: () => geometry.radialAt(1),
    site: fades ? { ...base.site, fuelKg: fadingKg(plan, chance) + WARMED_UP_KG } : base.site,
  }
  const half = [geometry.thicknessM / 2, geometry.widthM / 2, geometry.lengthM / 2] as const
  const cells = cutCells({ half, exponents: cut.exponents }, CELL_M)
  const likelyPullS = firstAbove(simulate({ ...setting, endsAtSlice: true }, member()).trace.coreC, targetOf(plan), 60)
  const cook = (course: Course) => {
    const run: Run = simulate({ ...setting, course, endsAtSlice: true }, member())
    const endS = run.moments['first-slice'] < Infinity ? run.moments['first-slice'] : 60 * (run.trace.coreC.length - 1)
    const history = {
      driveC: Float64Array.from(run.trace.driveC),
      coreC: Float64Array.from(run.trace.coreC),
      minuteS: 60,
      endS,
    }
    const { startC, kFactor, rhoCFactor } = member()
    const inside = cookCells(cells, setting.matter, history, {
      startC,
      boilingC: boilingC(setting.pressurePa),
      speed: kFactor / rhoCFactor,
    })
    const probeC = inside.coreC.map(
      (coreC, i) => coreC + (run.trace.probeC[i] as number) - (run.trace.coreC[i] as number),
    )
    const sliceCoreC = inside.coreC.at(-1) as number
    const { atSlice } = run
    return { run, probeC, sliceCoreC, sliceProbeC: sliceCoreC + atSlice.probeC - atSlice.coreC }
  }
  return {
    sides: { thickness: geometry.thicknessM, width: geometry.widthM, length: geometry.lengthM },
    member: member(),
    cook,
    likelyPullS: Number.isFinite(likelyPullS) ? likelyPullS : 6 * 3600,
  }
}
