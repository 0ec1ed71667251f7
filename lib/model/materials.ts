/** What a roast is made of, and how that conducts and stores heat. */
import type { SourceId } from './sources'

/** Shares of the mass without bone; they sum to 1. */
export interface Composition {
  readonly water: number
  readonly protein: number
  readonly fat: number
  readonly carb: number
  readonly ash: number
}
type Component = keyof Composition
export const COMPONENTS: readonly Component[] = ['water', 'protein', 'fat', 'carb', 'ash']

export interface Properties {
  readonly k_WpMK: number
  readonly rho_KgpM3: number
  readonly cp_JpKgK: number
}

/** a + b t + c t², t in °C, valid -40 to 150 °C (water from 0). W/mK, kg/m³ and J/kgK. [choi-okos-1986] */
type Polynomial = readonly [number, number, number]
const K_WPMK: Record<Component, Polynomial> = {
  water: [0.57109, 1.7625e-3, -6.7036e-6],
  protein: [0.17881, 1.1958e-3, -2.7178e-6],
  fat: [0.18071, -2.7604e-4, -1.7749e-7],
  carb: [0.20141, 1.3874e-3, -4.3312e-6],
  ash: [0.32962, 1.4011e-3, -2.9069e-6],
}
const RHO_KGPM3: Record<Component, Polynomial> = {
  water: [997.18, 3.1439e-3, -3.7574e-3],
  protein: [1329.9, -0.5184, 0],
  fat: [925.59, -0.41757, 0],
  carb: [1599.1, -0.31046, 0],
  ash: [2423.8, -0.28063, 0],
}
const CP_JPKGK: Record<Component, Polynomial> = {
  water: [4176.2, -0.090864, 5.4731e-3],
  protein: [2008.2, 1.2089, -1.3129e-3],
  fat: [1984.2, 1.4733, -4.8008e-3],
  carb: [1548.8, 1.9625, -5.9399e-3],
  ash: [1092.6, 1.8896, -3.6817e-3],
}
const at = ([a, b, c]: Polynomial, t: number) => a + b * t + c * t * t

/**
 * Bone as a mixed volume share: no table we hold gives cooked bone, marrow included. [estimate] between spongy beef bone,
 * 0.29 W/mK and 3.05 MJ/m³K [bone-cancellous-1970s], and compact, 0.55 W/mK [bone-cortical-2018]; what the place of the
 * bone and these ends do to the core's time is measured in tests/reference/bone-3d.test.ts.
 */
export const BONE: Properties & { readonly source: SourceId } = {
  k_WpMK: 0.42,
  rho_KgpM3: 1450,
  cp_JpKgK: 1600,
  source: 'estimate',
}
/** Raw meat as weighed, for volume from mass. [estimate] 1030 to 1070 by fat; 1 % of density is 0.3 % of a length. */
export const MEAT_RHO_KGPM3 = 1045

/**
 * Properties of boneless meat at a temperature.
 * ρ = 1/Σ(x/ρᵢ), cp = Σ x cpᵢ, k = Σ φᵢ kᵢ by volume share. Above freezing only (below -1 °C ice is not modelled).
 * Source: [choi-okos-1986]. Accuracy: gates `choi-okos/*` in tests/reference/gates.ts.
 */
export function propertiesAt(composition: Composition, tempC: number): Properties {
  let volume = 0
  let conduction = 0
  let heat = 0
  for (const c of COMPONENTS) {
    const share = composition[c]
    const v = share / at(RHO_KGPM3[c], tempC)
    volume += v
    conduction += v * at(K_WPMK[c], tempC)
    heat += share * at(CP_JPKGK[c], tempC)
  }
  return { k_WpMK: conduction / volume, rho_KgpM3: 1 / volume, cp_JpKgK: heat }
}

/** The same with `boneShare` of the mass as bone, mixed by volume (k) and by mass (cp). */
export function propertiesWithBone(composition: Composition, boneShare: number, tempC: number): Properties {
  const meat = propertiesAt(composition, tempC)
  const meatVolume = (1 - boneShare) / meat.rho_KgpM3
  const boneVolume = boneShare / BONE.rho_KgpM3
  const volume = meatVolume + boneVolume
  return {
    k_WpMK: (meatVolume * meat.k_WpMK + boneVolume * BONE.k_WpMK) / volume,
    rho_KgpM3: 1 / volume,
    cp_JpKgK: (1 - boneShare) * meat.cp_JpKgK + boneShare * BONE.cp_JpKgK,
  }
}

/** Look-up for kernels: entry i is at `TABLE_FROM_C + i` °C, 1 K apart, to `TABLE_TO_C`. */
export interface PropertyTable {
  readonly fromC: number
  readonly k_WpMK: Float64Array
  readonly rhoCp_JpM3K: Float64Array
}
export const TABLE_FROM_C = -5
export const TABLE_TO_C = 160

/**
 * Melting fat takes heat that the polynomials leave out. Beef and mutton melt at 40 to 55 °C, lard at 28 to 40, poultry at 30 to
 * 34 [fat-melting-2011]; much of each has melted below that: middle and width [estimate], J per kg of fat from memory.
 */
const FAT_MELTING = { middleC: 32, widthK: 8, jpKg: 80_000 } as const
function meltingJpKgK(fat: number, tempC: number) {
  const { middleC, widthK, jpKg } = FAT_MELTING
  return (fat * jpKg * Math.exp(-0.5 * ((tempC - middleC) / widthK) ** 2)) / (widthK * Math.sqrt(2 * Math.PI))
}

/** Conductivity and volumetric heat capacity at 1 K steps; hotter than the polynomials' 150 °C the value there stands. */
export function propertyTable(composition: Composition, boneShare = 0): PropertyTable {
  const length = TABLE_TO_C - TABLE_FROM_C + 1
  const k_WpMK = new Float64Array(length)
  const rhoCp_JpM3K = new Float64Array(length)
  for (let i = 0; i < length; i++) {
    const p = propertiesWithBone(composition, boneShare, Math.min(150, TABLE_FROM_C + i))
    k_WpMK[i] = p.k_WpMK
    const melting = (1 - boneShare) * meltingJpKgK(composition.fat, TABLE_FROM_C + i)
    rhoCp_JpM3K[i] = p.rho_KgpM3 * (p.cp_JpKgK + melting)
  }
  return { fromC: TABLE_FROM_C, k_WpMK, rhoCp_JpM3K }
}

/** Printed percentages (water, protein, fat, ash) to shares that sum to 1; printed rows sum to 98 to 100 %. */
export function compositionOf(water: number, protein: number, fat: number, ash: number): Composition {
  const sum = water + protein + fat + ash
  return { water: water / sum, protein: protein / sum, fat: fat / sum, carb: 0, ash: ash / sum }
}
/** The same lean with another share of fat, the rest in proportion. */
export function withFat(lean: Composition, fat: number): Composition {
  const scale = (1 - fat) / (1 - lean.fat)
  return {
    water: lean.water * scale,
    protein: lean.protein * scale,
    fat,
    carb: lean.carb * scale,
    ash: lean.ash * scale,
  }
}

/** [ashrae-2006-ch9] table 3, % by mass. */
export const MEATS = {
  'beef carcass, choice': compositionOf(57.32, 17.32, 24.05, 0.81),
  'beef ribs, whole': compositionOf(54.54, 16.37, 26.98, 0.77),
  'beef round, lean': compositionOf(70.83, 22.03, 4.89, 1.07),
  'beef sirloin, lean': compositionOf(71.7, 21.24, 4.4, 1.08),
  'beef short loin, lean': compositionOf(69.59, 20.27, 8.17, 1.01),
  'beef tenderloin, lean': compositionOf(68.4, 20.78, 7.9, 1.04),
  'pork shoulder, lean': compositionOf(72.63, 19.55, 7.14, 1.02),
  'lamb composite, lean': compositionOf(73.42, 20.29, 5.25, 1.06),
  'lamb leg, lean': compositionOf(74.11, 20.56, 4.51, 1.07),
  turkey: compositionOf(70.4, 20.42, 8.02, 0.88),
} as const
