/** Family B: another surface law, in 3-D, with the bone where it lies, heat that is uneven about the roast, and a biased dial. */

import { boneBody } from '../../lib/model/bone'
import type { CookPlan } from '../../lib/model/cook'
import { COOKERS } from '../../lib/model/cooker'
import { Cooker } from '../../lib/model/cooker-path'
import type { Cut } from '../../lib/model/cut'
import { cutById } from '../../lib/model/cuts'
import { prepared } from '../../lib/model/forecast-cook'
import { cookAllBy } from '../../lib/model/kernels'
import { BONE } from '../../lib/model/materials'
import { rawAt } from '../../lib/model/meat'
import { type Chance, chanceOf } from '../../lib/model/random'
import { settingOf, windAtCookerMpS } from '../../lib/model/setting'
import { geometryOf } from '../../lib/model/shape'
import { pressureAtPa, saturationPa } from '../../lib/model/vapour'
import { metres } from '../../lib/units'
import { quarters, shareIn } from '../reference/bone-3d'
import { dryingSkin } from './law-d'
import { between, fadingKg, planOf, readingsOf, type Twin, type TwinKind, targetOf } from './twin'

const CELL_M = 0.009
const LONGEST_STEP_S = 30
const SAFE = 0.8
const REST_S = 900
const SEAR_C = 300
const SEAR_FOR_S = 240
const SEAR_MOST_S = 900
const LONGEST_S = 8 * 3600
/** Nearest cells that the probe's tip lies among. */
const ABOUT_TIP = 4

export function dryingTwin(kind: TwinKind, n: number, seed: number, chance: Chance): Twin | undefined {
  const plan = planOf(kind, n, chance)
  const told = prepared(plan, 0, cookAllBy('simd')).course
  const probeInS = told.probeInS ?? 0
  const solid = new Drying(plan, chance)
  const fire = fireOf(plan, kind, chance, chanceOf(seed, 9000 + n, 3))
  const lid = told.lid.flatMap(([from, to]) => [
    { atS: from, open: true },
    { atS: to, open: false },
  ])
  const probeC: number[] = []
  const dialC: number[] = []
  let pullS = Infinity
  let offS = Infinity
  let hotS = Infinity
  let sliceS = Infinity
  let searAimed = false
  let t = 0
  let before = solid.reads()
  const sear = kind === 'vents-open'
  while (t < sliceS) {
    if (t > LONGEST_S && pullS === Infinity) return undefined
    while (lid[0] && lid[0].atS <= t) {
      fire.lid(lid[0].open, t)
      lid.shift()
    }
    if (t % 60 === 0) {
      probeC.push(solid.probeC())
      dialC.push(fire.readingC(t))
    }
    if (sear && pullS < Infinity && !searAimed && t >= pullS + 45) {
      fire.aim(SEAR_C, t, true)
      searAimed = true
    }
    const stepS = Math.min(solid.stepS, 60 - (t % 60))
    solid.step(stepS, t, t < offS ? fire : undefined)
    t = Math.round((t + stepS) * 1e6) / 1e6
    const now = solid.reads()
    if (pullS === Infinity && t >= probeInS && now >= targetOf(plan)) {
      pullS = Math.max(probeInS, t - stepS * (1 - (targetOf(plan) - before) / (now - before || 1)))
      if (!sear) offS = pullS
    }
    if (searAimed && hotS === Infinity && fire.readingC(t) >= SEAR_C - 15) hotS = t
    if (sear && offS === Infinity) offS = Math.min(hotS + SEAR_FOR_S, pullS + SEAR_MOST_S) <= t ? t : Infinity
    if (offS < Infinity) sliceS = offS + REST_S
    before = now
  }
  if (pullS < 600) return undefined
  const biasK = COOKERS[plan.cooker.kind].levelSdK * 0.7 * chance.normal()
  const readings = readingsOf(chance, {
    fromS: probeInS,
    untilS: pullS,
    coreC: (timeS) => between(probeC, timeS) + solid.probeBiasK,
    cookerC: (timeS) => between(dialC, timeS) + biasK,
  })
  return {
    plan,
    readings,
    marks: [],
    probeInS,
    pullS,
    sliceS,
    sliceCoreC: solid.coldestC(),
    sliceProbeC: solid.reads(),
  }
}

function fireOf(plan: CookPlan, kind: TwinKind, chance: Chance, drift: Chance): Cooker {
  const habits = COOKERS[plan.cooker.kind]
  const fuelKg = kind === 'fuel-fade' ? fadingKg(plan, chance) : Infinity
  const site = { airC: plan.surroundings.air, windMpS: windAtCookerMpS(plan), direct: 0, fuelKg, refuels: [] }
  const roast = plan.stages.find((stage) => stage.do === 'roast')
  const member = {
    levelK: 0,
    warmUpS: 60 * habits.warmUpMin,
    climbFactor: Math.exp(0.25 * chance.normal()),
    lossFactor: Math.exp(0.15 * chance.normal()),
    cyclePhase: chance.uniform(),
    chance: drift,
  }
  return new Cooker(habits, member, site, (roast?.at ?? 150) + 0.5 * habits.levelSdK * chance.normal(), false)
}

class Drying {
  readonly stepS: number
  readonly probeBiasK: number
  private readonly q
  private readonly link: Float64Array
  private readonly store: Float64Array
  private readonly tempC: Float64Array
  private readonly flow: Float64Array
  private readonly outer: number[]
  private readonly skinC: Float64Array
  private readonly water: Float64Array
  private readonly inward: Float64Array
  private readonly unevenK: Float64Array
  private readonly tip: readonly { readonly i: number; readonly weight: number }[]
  private readonly law
  private readonly h_WpM2K: number
  private readonly levelK: number
  private readonly vapourPa: number
  private readonly around = { airC: 0, radiantC: 0 }

  constructor(
    private readonly plan: CookPlan,
    chance: Chance,
  ) {
    const other = (sd: number) => Math.exp(sd * chance.normal())
    const told = cutById(plan.roast.cut) as Cut
    const cut: Cut = { ...told, widthPerThickness: told.widthPerThickness * other(0.08) }
    const typical = geometryOf(cut, plan.roast.mass)
    const thickness = metres(typical.thicknessM * other(0.8 * typical.thicknessSpread))
    const g = geometryOf(cut, plan.roast.mass, { thickness })
    const half = [g.thicknessM / 2, g.widthM / 2, g.lengthM / 2] as const
    const q = quarters({ half, exponents: cut.exponents }, CELL_M)
    this.q = q
    const one = q.cells.count
    const { matter } = settingOf(plan, cut, g)
    const raw = rawAt(matter, 45)
    const [kFactor, cFactor] = [0.9 * other(0.08), other(0.04)]
    const body = boneBody(cut, half)
    const inBone = q.place.map(([x, y, z]) => (body ? shareIn(body, x, y, z, half) : 0))
    const k = inBone.map((share) => kFactor * ((1 - share) * raw.k + share * BONE.k_WpMK))
    const c = inBone.map((share) => cFactor * ((1 - share) * raw.c + share * BONE.rho_KgpM3 * BONE.cp_JpKgK))
    this.store = Float64Array.from(c, (x, i) => x * (q.cells.volumeM3[i % one] as number))
    this.link = Float64Array.from(q.areaPerM, (area, n) => {
      const [a, b] = [k[q.from[n] as number] as number, k[q.to[n] as number] as number]
      return (area * 2 * a * b) / (a + b)
    })
    const startC = plan.roast.start + 2 * chance.normal()
    const row = (value: number) => new Float64Array(q.count).fill(value)
    this.tempC = row(startC)
    this.flow = row(0)
    this.skinC = row(startC)
    this.water = row(0)
    this.outer = Array.from({ length: q.count }, (_, i) => i).filter((i) => (q.cells.skinM2[i % one] as number) > 0)
    this.inward = Float64Array.from(k, (x, i) => x / (q.cells.depthM[i % one] as number))
    const [up, side] = [12 * chance.normal(), 8 * chance.normal()]
    this.unevenK = Float64Array.from(q.place, ([x, y]) => up * x + side * y)
    this.levelK = 0.7 * COOKERS[plan.cooker.kind].levelSdK * chance.normal()
    const hFactor = other(0.3)
    this.h_WpM2K = 10.8 * COOKERS[plan.cooker.kind].hFactor * hFactor
    this.vapourPa = Math.min(30_000, 6300 * other(0.5))
    const skin = {
      emissivity: Math.min(0.98, 0.87 + 0.05 * chance.normal()),
      wetFloor: 0.035 * other(0.4),
      filmKgpM2: 0.018 * other(0.6),
      waterKgpM2: 10.5 * other(0.25),
    }
    this.law = dryingSkin(skin, pressureAtPa(plan.surroundings.altitude))
    this.tip = tipAt(q.place, half, 0.4 * (2 * chance.uniform() - 1))
    this.probeBiasK = 0.5 * chance.normal()
    this.stepS = Math.min(LONGEST_STEP_S, this.stableS())
  }
  private stableS(): number {
    const { q, link, store, inward, outer } = this
    const out = new Float64Array(q.count)
    link.forEach((g, n) => {
      for (const end of [q.from[n] as number, q.to[n] as number]) out[end] = (out[end] as number) + g
    })
    for (const i of outer)
      out[i] = (out[i] as number) + (inward[i] as number) * (q.cells.skinM2[i % q.cells.count] as number)
    return out.reduce((least, g, i) => Math.min(least, (SAFE * (store[i] as number)) / g), Infinity)
  }

  probeC = () => this.tip.reduce((sum, { i, weight }) => sum + weight * (this.tempC[i] as number), 0)
  /** With its own bias: what the crew goes by. */
  reads = () => this.probeC() + this.probeBiasK
  coldestC = () => this.tempC.reduce((least, x) => Math.min(least, x), Infinity)

  /** In the cooker, or resting in the open. */
  step(stepS: number, timeS: number, fire: Cooker | undefined) {
    const { q, flow, tempC, link, store } = this
    flow.fill(0)
    for (let n = 0; n < link.length; n++) {
      const a = q.from[n] as number
      const b = q.to[n] as number
      const heat = (link[n] as number) * ((tempC[b] as number) - (tempC[a] as number))
      flow[a] = (flow[a] as number) + heat
      flow[b] = (flow[b] as number) - heat
    }
    this.heatSkin(stepS, timeS, fire)
    for (let i = 0; i < q.count; i++)
      tempC[i] = (tempC[i] as number) + (stepS * (flow[i] as number)) / (store[i] as number)
  }
  private heatSkin(stepS: number, timeS: number, fire: Cooker | undefined) {
    const { air, humidity, wind } = this.plan.surroundings
    if (fire) fire.surround(this.around, timeS + stepS / 2)
    const one = this.q.cells.count
    for (const i of this.outer) {
      const around = fire
        ? {
            airC: this.around.airC + this.levelK + (this.unevenK[i] as number),
            h_WpM2K: this.h_WpM2K,
            vapourPa: this.vapourPa,
          }
        : { airC: air, h_WpM2K: 6 + wind, vapourPa: humidity * saturationPa(air) }
      const inward = this.inward[i] as number
      const { skinC, water } = this.law(
        this.skinC[i] as number,
        this.tempC[i] as number,
        inward,
        this.water[i] as number,
        around,
      )
      this.skinC[i] = skinC
      this.water[i] = (this.water[i] as number) + stepS * Math.max(0, water)
      this.flow[i] =
        (this.flow[i] as number) +
        inward * (this.q.cells.skinM2[i % one] as number) * (skinC - (this.tempC[i] as number))
    }
  }
}

/** The cells about a tip so far above or below the middle, near ones counting more. */
function tipAt(
  place: readonly (readonly [number, number, number])[],
  half: readonly [number, number, number],
  x: number,
) {
  const far = place.map(([px, py, pz], i) => ({
    i,
    apart: Math.hypot((px - x) * half[0], py * half[1], pz * half[2]),
  }))
  const near = far.sort((a, b) => a.apart - b.apart).slice(0, ABOUT_TIP)
  const weights = near.map(({ apart }) => 1 / (apart + 1e-3))
  const whole = weights.reduce((sum, w) => sum + w, 0)
  return near.map(({ i }, n) => ({ i, weight: (weights[n] as number) / whole }))
}
