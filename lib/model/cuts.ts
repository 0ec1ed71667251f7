/** The catalogue of cuts: what each is made of, how thick it lies, how sure we are. */
import { type Composition, MEATS, withFat } from './materials'
import type { SourceId } from './sources'

export type Animal = 'beef' | 'veal' | 'venison' | 'pork' | 'lamb' | 'turkey' | 'chicken' | 'duck' | 'goose' | 'salmon'

/** One cut. Lengths are of the thickest place as it lies; the solid is |x/a|^p0 + |y/b|^p1 + |z/c|^p2 <= 1. */
export interface Cut {
  readonly id: string
  readonly name: string
  readonly animal: Animal
  readonly composition: Composition
  /** Share of the raw mass that is bone. */
  readonly boneShare: number
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
  /** What the sizes and the composition rest on, in words. */
  readonly note: string
}

/** [estimate] ± 12 % on the thickness of an unmeasured roast; ± 5 % of one that was measured. */
export const GUESSED_THICKNESS_SPREAD = 0.12
export const MEASURED_THICKNESS_SPREAD = 0.05

type Exponents = Cut['exponents']
interface Row {
  readonly name: string
  readonly animal: Animal
  readonly meat: Composition
  readonly meatFrom: SourceId
  readonly mm: number
  readonly kg: number
  readonly grows: number
  readonly width: number
  readonly solid: Exponents
  readonly bone?: number
  readonly massShare?: number
  readonly sizeFrom?: SourceId
  readonly note: string
}

const SIMILAR = 1 / 3
const SECTION = 0
const ASHRAE = 'ashrae-2006-ch9'
const GUESS = 'estimate'
/** [own-fit] one turkey row; a cavity, legs and wings take the rest. */
const BIRD_SHARE = 0.55
const PORK_FATTY = withFat(MEATS['pork shoulder, lean'], 0.17)
const PORK_LEG = withFat(MEATS['pork shoulder, lean'], 0.1)
const LAMB_LEG = withFat(MEATS['lamb leg, lean'], 0.16)
const LAMB_FATTY = withFat(MEATS['lamb composite, lean'], 0.16)
const VEAL = withFat(MEATS['beef round, lean'], 0.055)
const FAT_BIRD = withFat(MEATS.turkey, 0.28)
const SALMON = withFat(MEATS.turkey, 0.12)

const ROWS: Readonly<Record<string, Row>> = {
  'beef-rib-bone-in': {
    name: 'beef rib, bone in',
    animal: 'beef',
    meat: MEATS['beef ribs, whole'],
    meatFrom: ASHRAE,
    mm: 110,
    kg: 3.2,
    grows: SIMILAR,
    width: 1.55,
    solid: [2.5, 2.5, 8],
    bone: 0.17,
    sizeFrom: 'lowe-1930s',
    note: 'The 1930s handbook gives 4 to 4.5 in (102 to 114 mm). Thickness grows with the mass, so that a roast of 4 kg and more has the 118 mm and over of ribs today (estimate).',
  },
  'beef-rib-boneless': {
    name: 'beef rib, boned and rolled',
    animal: 'beef',
    meat: MEATS['beef ribs, whole'],
    meatFrom: ASHRAE,
    mm: 135,
    kg: 2.7,
    grows: SECTION,
    width: 1,
    solid: [2, 2, 8],
    note: 'Rolled and tied round; size an estimate.',
  },
  'beef-strip-boneless': {
    name: 'beef strip loin, boneless',
    animal: 'beef',
    meat: MEATS['beef short loin, lean'],
    meatFrom: ASHRAE,
    mm: 75,
    kg: 3,
    grows: SECTION,
    width: 1.9,
    solid: [2.5, 2.5, 8],
    note: 'Size an estimate.',
  },
  'beef-tenderloin': {
    name: 'beef tenderloin',
    animal: 'beef',
    meat: MEATS['beef tenderloin, lean'],
    meatFrom: ASHRAE,
    mm: 75,
    kg: 2.27,
    grows: SIMILAR,
    width: 1.2,
    solid: [2, 2, 2.5],
    note: 'Thickest place of a trimmed whole one, which tapers; an estimate.',
  },
  'beef-tri-tip': {
    name: 'beef tri-tip',
    animal: 'beef',
    meat: MEATS['beef sirloin, lean'],
    meatFrom: ASHRAE,
    mm: 60,
    kg: 1.1,
    grows: SIMILAR,
    width: 2,
    solid: [2, 2, 2.5],
    note: 'Size an estimate.',
  },
  'beef-eye-round': {
    name: 'beef eye of round',
    animal: 'beef',
    meat: MEATS['beef round, lean'],
    meatFrom: ASHRAE,
    mm: 88,
    kg: 1.13,
    grows: 0.2,
    width: 1.2,
    solid: [2, 2, 6],
    note: 'Size an estimate.',
  },
  'beef-top-round': {
    name: 'beef top round',
    animal: 'beef',
    meat: MEATS['beef round, lean'],
    meatFrom: ASHRAE,
    mm: 100,
    kg: 1.5,
    grows: SIMILAR,
    width: 1.3,
    solid: [2.5, 2.5, 3],
    note: 'Size an estimate.',
  },
  'beef-round-tip': {
    name: 'beef round tip',
    animal: 'beef',
    meat: MEATS['beef round, lean'],
    meatFrom: ASHRAE,
    mm: 100,
    kg: 1.7,
    grows: SIMILAR,
    width: 1.2,
    solid: [2.2, 2.2, 3],
    note: 'Size an estimate.',
  },
  'beef-chuck-boneless': {
    name: 'beef chuck, boneless',
    animal: 'beef',
    meat: MEATS['beef carcass, choice'],
    meatFrom: ASHRAE,
    mm: 100,
    kg: 1.8,
    grows: SIMILAR,
    width: 1.3,
    solid: [2.5, 2.5, 4],
    note: 'Composition of the whole carcass; size an estimate.',
  },
  'beef-brisket': {
    name: 'beef brisket',
    animal: 'beef',
    meat: MEATS['beef carcass, choice'],
    meatFrom: ASHRAE,
    mm: 65,
    kg: 5.5,
    grows: SIMILAR,
    width: 3.8,
    solid: [3, 3, 3],
    note: 'One solid for flat (40 to 50 mm) and point (90 to 110 mm); composition of the whole carcass; size an estimate.',
  },
  'pork-loin-bone-in': {
    name: 'pork loin, bone in',
    animal: 'pork',
    meat: MEATS['pork shoulder, lean'],
    meatFrom: ASHRAE,
    mm: 85,
    kg: 1.8,
    grows: SECTION,
    width: 1.5,
    solid: [2.3, 2.3, 8],
    bone: 0.2,
    note: 'Composition of lean shoulder for want of loin; size an estimate.',
  },
  'pork-loin-boneless': {
    name: 'pork loin, boneless',
    animal: 'pork',
    meat: MEATS['pork shoulder, lean'],
    meatFrom: ASHRAE,
    mm: 72,
    kg: 1.4,
    grows: SECTION,
    width: 1.5,
    solid: [2.3, 2.3, 8],
    note: 'Composition of lean shoulder for want of loin; size an estimate.',
  },
  'pork-shoulder-bone-in': {
    name: 'pork shoulder, bone in',
    animal: 'pork',
    meat: PORK_FATTY,
    meatFrom: GUESS,
    mm: 119,
    kg: 2.27,
    grows: SIMILAR,
    width: 1.3,
    solid: [3, 3, 3],
    bone: 0.1,
    note: 'The butt; lean shoulder with 17 % fat and size are estimates.',
  },
  'pork-shoulder-boneless': {
    name: 'pork shoulder, boneless',
    animal: 'pork',
    meat: PORK_FATTY,
    meatFrom: GUESS,
    mm: 115,
    kg: 2,
    grows: SIMILAR,
    width: 1.2,
    solid: [2.3, 2.3, 4],
    note: 'The butt; lean shoulder with 17 % fat and size are estimates.',
  },
  'pork-leg-bone-in': {
    name: 'leg of pork, bone in',
    animal: 'pork',
    meat: PORK_LEG,
    meatFrom: GUESS,
    mm: 157,
    kg: 5,
    grows: SIMILAR,
    width: 1.15,
    solid: [2.2, 2.2, 2.2],
    bone: 0.17,
    note: 'Fresh ham; lean pork with 10 % fat and size are estimates.',
  },
  'lamb-leg-bone-in': {
    name: 'leg of lamb, bone in',
    animal: 'lamb',
    meat: LAMB_LEG,
    meatFrom: GUESS,
    mm: 113,
    kg: 3,
    grows: SIMILAR,
    width: 1.25,
    solid: [2.2, 2.2, 2.2],
    bone: 0.2,
    note: 'Lean leg from the table with 16 % fat (estimate); size an estimate.',
  },
  'lamb-leg-boneless': {
    name: 'leg of lamb, boned and rolled',
    animal: 'lamb',
    meat: LAMB_LEG,
    meatFrom: GUESS,
    mm: 126,
    kg: 2.5,
    grows: SIMILAR,
    width: 1.05,
    solid: [2, 2, 5],
    note: 'Rolled and tied; lean leg from the table with 16 % fat (estimate); size an estimate.',
  },
  'lamb-rack': {
    name: 'rack of lamb',
    animal: 'lamb',
    meat: MEATS['lamb composite, lean'],
    meatFrom: ASHRAE,
    mm: 50,
    kg: 0.7,
    grows: SIMILAR,
    width: 1.6,
    solid: [2.2, 2.2, 8],
    bone: 0.2,
    note: 'Size an estimate.',
  },
  'lamb-shoulder-bone-in': {
    name: 'lamb shoulder, bone in',
    animal: 'lamb',
    meat: LAMB_FATTY,
    meatFrom: GUESS,
    mm: 91,
    kg: 2.27,
    grows: SIMILAR,
    width: 1.9,
    solid: [3, 3, 3],
    bone: 0.2,
    note: 'Lean lamb from the table with 16 % fat (estimate); size an estimate.',
  },
  'veal-leg-boneless': {
    name: 'leg of veal, boneless',
    animal: 'veal',
    meat: VEAL,
    meatFrom: GUESS,
    mm: 87,
    kg: 1.13,
    grows: SIMILAR,
    width: 1.25,
    solid: [2.3, 2.3, 4],
    note: 'Lean beef with 5.5 % fat for want of veal; size an estimate.',
  },
  'veal-loin-bone-in': {
    name: 'veal loin, bone in',
    animal: 'veal',
    meat: VEAL,
    meatFrom: GUESS,
    mm: 85,
    kg: 1.6,
    grows: SECTION,
    width: 1.5,
    solid: [2.3, 2.3, 8],
    bone: 0.22,
    note: 'Lean beef with 5.5 % fat for want of veal; size an estimate.',
  },
  'venison-haunch-boneless': {
    name: 'haunch of venison, boneless',
    animal: 'venison',
    meat: MEATS['beef round, lean'],
    meatFrom: GUESS,
    mm: 85,
    kg: 1.5,
    grows: SIMILAR,
    width: 1.3,
    solid: [2.3, 2.3, 4],
    note: 'Lean beef round for want of venison; size an estimate.',
  },
  'turkey-whole': {
    name: 'whole turkey',
    animal: 'turkey',
    meat: MEATS.turkey,
    meatFrom: ASHRAE,
    sizeFrom: 'own-fit',
    mm: 136,
    kg: 5.9,
    grows: SIMILAR,
    width: 1.25,
    solid: [2, 2, 2],
    bone: 0.15,
    massShare: BIRD_SHARE,
    note: 'An ellipsoid of 0.55 of the mass that warms like the bird.',
  },
  'turkey-breast-bone-in': {
    name: 'turkey breast, bone in',
    animal: 'turkey',
    meat: MEATS.turkey,
    meatFrom: ASHRAE,
    mm: 110,
    kg: 2.5,
    grows: SIMILAR,
    width: 1.35,
    solid: [2, 2, 2.5],
    bone: 0.15,
    note: 'Size an estimate.',
  },
  'chicken-whole': {
    name: 'whole chicken',
    animal: 'chicken',
    meat: MEATS.turkey,
    meatFrom: GUESS,
    sizeFrom: 'own-fit',
    mm: 105,
    kg: 2.7,
    grows: SIMILAR,
    width: 1.25,
    solid: [2, 2, 2],
    bone: 0.15,
    massShare: BIRD_SHARE,
    note: 'Composition and share of the mass as the turkey.',
  },
  'duck-whole': {
    name: 'whole duck',
    animal: 'duck',
    meat: FAT_BIRD,
    meatFrom: GUESS,
    mm: 92,
    kg: 2.3,
    grows: SIMILAR,
    width: 1.35,
    solid: [2, 2, 2],
    bone: 0.2,
    massShare: BIRD_SHARE,
    note: '28 % fat with skin and size are estimates; share of the mass as the turkey.',
  },
  'goose-whole': {
    name: 'whole goose',
    animal: 'goose',
    meat: FAT_BIRD,
    meatFrom: GUESS,
    mm: 118,
    kg: 5,
    grows: SIMILAR,
    width: 1.35,
    solid: [2, 2, 2],
    bone: 0.2,
    massShare: BIRD_SHARE,
    note: '28 % fat with skin and size are estimates; share of the mass as the turkey.',
  },
  'salmon-side': {
    name: 'side of salmon',
    animal: 'salmon',
    meat: SALMON,
    meatFrom: GUESS,
    mm: 32,
    kg: 1.3,
    grows: SIMILAR,
    width: 5.5,
    solid: [2.5, 2.5, 4],
    note: 'Lean turkey with 12 % fat for want of fish; size an estimate.',
  },
}

function toCut(id: string, row: Row): Cut {
  return {
    id,
    name: row.name,
    animal: row.animal,
    composition: row.meat,
    boneShare: row.bone ?? 0,
    thicknessM: row.mm / 1000,
    atMassKg: row.kg,
    growth: row.grows,
    sizing: row.grows === SIMILAR ? 'similar' : 'section',
    widthPerThickness: row.width,
    exponents: row.solid,
    massShare: row.massShare ?? 1,
    thicknessSpread: GUESSED_THICKNESS_SPREAD,
    compositionSource: row.meatFrom,
    sizeSource: row.sizeFrom ?? GUESS,
    note: row.note,
  }
}

export const CUTS: readonly Cut[] = Object.entries(ROWS).map(([id, row]) => toCut(id, row))
const BY_ID = new Map(CUTS.map((cut) => [cut.id, cut]))
export const cutById = (id: string): Cut | undefined => BY_ID.get(id)
