/** What a cut is: what it is made of, how thick it lies, how sure we are, where its bone and fat lie. */
import type { Composition } from './materials'
import type { SourceId } from './sources'

export const ANIMALS = [
  'beef',
  'veal',
  'venison',
  'pork',
  'lamb',
  'turkey',
  'chicken',
  'duck',
  'goose',
  'salmon',
] as const
export type Animal = (typeof ANIMALS)[number]

/**
 * Where the bone lies, in the thickest slice as it lies on the grate:
 * shaft, a long bone near the middle, along the roast; ribs, a plate along the under side; blade, a flat bone inside, parallel
 * to the wide sides; frame, a bird's back and breast bone along the under side. Its place in numbers: bone.ts.
 */
export const BONE_PLACES = ['shaft', 'ribs', 'blade', 'frame'] as const
export type BonePlace = (typeof BONE_PLACES)[number]
export interface Bone {
  readonly place: BonePlace
  /** Share of the raw mass. */
  readonly share: number
}

/** How a cut comes to its thickness, which is how much roasts of one mass differ in it. */
export const BUILDS = ['rolled', 'section', 'bird', 'joint', 'block', 'tapering', 'flat'] as const
export type Build = (typeof BUILDS)[number]
/**
 * Log standard deviation of the thickness of an unmeasured roast of known mass. One is measured, loins: 10.8 % over 1,234
 * carcasses, of which the loin's weight explains r = 0.47, so 9.6 % at one weight, and a little for how it is trimmed
 * [pork-loin-2016]. The others are placed about it [estimate]: string makes rolled ones alike; a flat or tapering cut has no
 * one thickness, and a knife sets a block's.
 */
export const THICKNESS_SPREAD: Readonly<Record<Build, number>> = {
  rolled: 0.08,
  section: 0.1,
  bird: 0.1,
  joint: 0.12,
  block: 0.12,
  tapering: 0.14,
  flat: 0.16,
}

/** One cut. Lengths are of the thickest place as it lies; the solid is |x/a|^p0 + |y/b|^p1 + |z/c|^p2 <= 1. */
export interface Cut {
  readonly id: string
  readonly name: string
  readonly animal: Animal
  readonly composition: Composition
  readonly build: Build
  readonly bone?: Bone
  /** Share of the raw mass that is bone; 0 without one. */
  readonly boneShare: number
  /** Thickness of the fat over the upper side, share of the half thickness. [estimate] ± half of it; for the picture only. */
  readonly fatCap: number
  /** Thickness at `atMassKg`; it grows as mass^`growth` (1/3: all sides alike; 0: a section, longer when heavier). */
  readonly thicknessM: number
  readonly atMassKg: number
  readonly growth: number
  readonly sizing: 'similar' | 'section'
  readonly widthPerThickness: number
  readonly exponents: readonly [number, number, number]
  /** Share of the mass that warms as one solid: less than 1 for whole birds, whose cavity, legs and wings it leaves out. */
  readonly massShare: number
  /** Log standard deviation of the thickness of an unmeasured roast. */
  readonly thicknessSpread: number
  readonly compositionSource: SourceId
  readonly sizeSource: SourceId
  readonly boneSource: SourceId
  /** What the sizes and the composition rest on, in words. */
  readonly note: string
}

/** A cut as the catalogue writes it: mm and kg, what is usual left out. */
export interface Row {
  readonly name: string
  readonly animal: Animal
  readonly meat: Composition
  readonly meatFrom: SourceId
  readonly mm: number
  readonly kg: number
  readonly grows: number
  readonly width: number
  readonly solid: Cut['exponents']
  readonly build: Build
  readonly bone?: Bone
  readonly boneFrom?: SourceId
  readonly fatCap?: number
  readonly massShare?: number
  readonly sizeFrom?: SourceId
  readonly note: string
}

export const toCut = (id: string, row: Row): Cut => ({
  id,
  name: row.name,
  animal: row.animal,
  composition: row.meat,
  build: row.build,
  ...(row.bone ? { bone: row.bone } : {}),
  boneShare: row.bone?.share ?? 0,
  fatCap: row.fatCap ?? 0,
  thicknessM: row.mm / 1000,
  atMassKg: row.kg,
  growth: row.grows,
  sizing: row.grows === 1 / 3 ? 'similar' : 'section',
  widthPerThickness: row.width,
  exponents: row.solid,
  massShare: row.massShare ?? 1,
  thicknessSpread: THICKNESS_SPREAD[row.build],
  compositionSource: row.meatFrom,
  sizeSource: row.sizeFrom ?? 'estimate',
  boneSource: row.boneFrom ?? 'estimate',
  note: row.note,
})
