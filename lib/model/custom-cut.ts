/** A cut of one's own: animal, shape, fat and bone make what the catalogue would have said. */
import type { Frac } from '../units'
import { type Animal, type BonePlace, type Build, type Cut, THICKNESS_SPREAD } from './cut'
import { cutById } from './cuts'
import { type Composition, MEATS, withFat } from './materials'

export const CUSTOM_SHAPES = ['round', 'oval', 'tapering', 'block', 'flat'] as const
export type CustomShape = (typeof CUSTOM_SHAPES)[number]
/** What the shoot file says of a cut that is not in the catalogue; the thickness beside it is measured. */
export interface CustomCut {
  readonly name: string
  readonly animal: Animal
  readonly shape: CustomShape
  /** Shares of the meat without bone, and of the whole. */
  readonly fat?: Frac
  readonly bone?: Frac
  readonly boneAt?: BonePlace
}
export interface NamedRoast {
  readonly cut: string
  readonly custom?: CustomCut
}
export const CUSTOM = 'custom'

/** Lean of each animal, [ashrae-2006-ch9]; for want of veal and venison lean beef, of other birds and fish the turkey. */
const LEAN: Readonly<Record<Animal, Composition>> = {
  beef: MEATS['beef round, lean'],
  veal: MEATS['beef round, lean'],
  venison: MEATS['beef round, lean'],
  pork: MEATS['pork shoulder, lean'],
  lamb: MEATS['lamb composite, lean'],
  turkey: MEATS.turkey,
  chicken: MEATS.turkey,
  duck: MEATS.turkey,
  goose: MEATS.turkey,
  salmon: MEATS.turkey,
}

/** The catalogue's proportions of such cuts: the rolled rib, the leg of veal, the leg of lamb, the butt, the brisket. [estimate] */
type Form = Pick<Cut, 'widthPerThickness' | 'exponents'> & { readonly build: Build; readonly boneAt: BonePlace }
const FORMS: Readonly<Record<CustomShape, Form>> = {
  round: { widthPerThickness: 1, exponents: [2, 2, 6], build: 'rolled', boneAt: 'shaft' },
  oval: { widthPerThickness: 1.4, exponents: [2.3, 2.3, 5], build: 'section', boneAt: 'ribs' },
  tapering: { widthPerThickness: 1.25, exponents: [2.2, 2.2, 2.2], build: 'tapering', boneAt: 'shaft' },
  block: { widthPerThickness: 1.3, exponents: [3, 3, 3], build: 'block', boneAt: 'blade' },
  flat: { widthPerThickness: 3, exponents: [3, 3, 3], build: 'flat', boneAt: 'blade' },
}
/** Where a cut of one's own would be as thick as measured; the thickness is required, so only its growth stays unused. */
const AT_MASS_KG = 2
const TYPICAL_M = 0.1

export function customCut({ name, animal, shape, fat, bone = 0 as Frac, boneAt }: CustomCut): Cut {
  const { build, boneAt: usual, ...form } = FORMS[shape]
  const lean = LEAN[animal]
  return {
    id: CUSTOM,
    name,
    animal,
    composition: fat === undefined ? lean : withFat(lean, fat),
    build,
    ...(bone > 0 ? { bone: { place: boneAt ?? usual, share: bone } } : {}),
    boneShare: bone,
    fatCap: 0,
    thicknessM: TYPICAL_M,
    atMassKg: AT_MASS_KG,
    growth: 1 / 3,
    sizing: 'similar',
    ...form,
    massShare: 1,
    thicknessSpread: THICKNESS_SPREAD[build],
    compositionSource: 'ashrae-2006-ch9',
    sizeSource: 'estimate',
    boneSource: 'estimate',
    note: 'A cut of the author’s own: its thickness is measured, its proportions are those of its shape (estimate).',
  }
}

/** The cut of a roast, the catalogue's or its own; undefined where it names neither. */
export const cutOf = (roast: NamedRoast): Cut | undefined =>
  roast.cut === CUSTOM ? roast.custom && customCut(roast.custom) : cutById(roast.cut)
/** The same, where the plan has been checked. */
export function knownCutOf(roast: NamedRoast): Cut {
  const cut = cutOf(roast)
  if (cut === undefined) throw new RangeError(`no cut "${roast.cut}" in the catalogue`)
  return cut
}
