/** The remaining comparisons, one function a gate. */
import { calibrate } from '../../lib/model/calibrate-3d'
import { cutCells, type Solid } from '../../lib/model/cut-cells'
import { CUTS, type Cut, cutById } from '../../lib/model/cuts'
import { compositionOf, MEATS, propertiesAt } from '../../lib/model/materials'
import { coreTimes3d } from '../../lib/model/run-3d'
import { geometryOf } from '../../lib/model/shape'
import { kilograms } from '../../lib/units'
import { ovenRun, published, type Sample } from './measure'

interface MeatRow {
  readonly item: string
  readonly water: number
  readonly protein: number
  readonly fat: number
  readonly ash: number
  readonly cp_above: number
}
interface ConductivityRow {
  readonly item: string
  readonly moisture: number | null
  readonly tC: number
  readonly k: number
}
const MEAT = published<{ rows: MeatRow[]; measured_k: ConductivityRow[] }>('meat-properties')

export const heatCapacity = (): Sample[] =>
  MEAT.rows.map((r) => ({
    label: r.item,
    error: propertiesAt(compositionOf(r.water, r.protein, r.fat, r.ash), 20).cp_JpKgK / (1000 * r.cp_above) - 1,
  }))

/** What is not water is taken as lean: 90 % protein, 6 % fat, 4 % ash. Raw only: cooked meat has lost the water it was measured with. */
export const conductivityRaw = (): Sample[] =>
  MEAT.measured_k.flatMap((r) => {
    if (r.moisture === null || r.tC > 20) return []
    const dry = 100 - r.moisture
    const k = propertiesAt(compositionOf(r.moisture, 0.9 * dry, 0.06 * dry, 0.04 * dry), r.tC).k_WpMK
    return [{ label: `${r.item}, ${r.tC} °C`, error: k / r.k - 1 }]
  })

interface SeriesRow {
  readonly shape: string
  readonly Bi?: number
  readonly Fo?: number
  readonly Bi_R?: number
  readonly Fo_R?: number
  readonly theta_centre: number
}
const HALF_M = 0.06
const FLAT = Number.POSITIVE_INFINITY
/** Solids whose centre the exact solutions know; the plane wall is a slab too wide for its edges to be felt. */
const SOLID_OF: readonly (readonly [RegExp, Solid])[] = [
  [/^sphere/, { half: [HALF_M, HALF_M, HALF_M], exponents: [2, 2, 2] }],
  [/^finite cylinder, half-length\/R=1/, { half: [HALF_M, HALF_M, HALF_M], exponents: [2, 2, FLAT] }],
  [/^finite cylinder, half-length\/R=2/, { half: [HALF_M, HALF_M, 2 * HALF_M], exponents: [2, 2, FLAT] }],
  [/^finite cylinder, half-length\/R=3/, { half: [HALF_M, HALF_M, 3 * HALF_M], exponents: [2, 2, FLAT] }],
  [/^brick/, { half: [HALF_M, 1.5 * HALF_M, 2 * HALF_M], exponents: [FLAT, FLAT, FLAT] }],
]
/** Times of the 3-D run to the exact centre's level, with the cell size a roast gets. */
export const conduction3d = (): Sample[] =>
  published<{ rows: SeriesRow[] }>('conduction-series').rows.flatMap((r) => {
    const solid = SOLID_OF.find(([name]) => name.test(r.shape))?.[1]
    if (!solid) return []
    const biot = r.Bi ?? (r.Bi_R as number)
    const fourier = r.Fo ?? (r.Fo_R as number)
    const [time] = coreTimes3d(cutCells(solid, HALF_M / 7), HALF_M / biot, [r.theta_centre])
    return [{ label: `${r.shape}, Bi ${biot}, Fo ${fourier}`, error: (time as number) / HALF_M ** 2 / fourier - 1 }]
  })

/** What radius and exponent cannot match of each cut's own 3-D run. */
export const shapeResidual = (): Sample[] =>
  CUTS.map((cut) => {
    const g = geometryOf(cut, kilograms(cut.atMassKg))
    const half = [g.thicknessM / 2, g.widthM / 2, g.lengthM / 2] as const
    return { label: cut.id, error: calibrate({ half, exponents: cut.exponents }).residual }
  })

interface LossRow {
  readonly item: string
  readonly mean_raw_lb: number
  readonly loss_pct: number
  readonly remove_C: number
  readonly max_C: number
}
const LOSS_CUTS: readonly (readonly [RegExp, string])[] = [
  [/^beef prime ribs/, 'beef-rib-bone-in'],
  [/^veal leg/, 'veal-leg-boneless'],
  [/^lamb leg/, 'lamb-leg-bone-in'],
  [/^pork loin/, 'pork-loin-bone-in'],
]
const KG_PER_LB = 0.45359237
/** Loss after a quarter of an hour of standing, from an oven at 149 °C (300 °F): the tables of the time; the handbook's part seen names none. */
export const handbookLosses = (): Sample[] =>
  published<{ rows: LossRow[] }>('losses-handbook').rows.map((r) => {
    const id = LOSS_CUTS.find(([name]) => name.test(r.item))?.[1] ?? ''
    const cut = cutById(id) as Cut
    const cook = { cut, massKg: r.mean_raw_lb * KG_PER_LB, startC: 4, ovenC: 148.9, endC: r.remove_C, restMin: 15 }
    return { label: `${r.item}, ${r.remove_C} °C`, error: ovenRun(cook).lossFrac - r.loss_pct / 100 }
  })

interface YieldRow {
  readonly item: string
  readonly cut: string
  readonly protein_raw: number
  readonly protein_roasted: number
}
const LEAN = MEATS['lamb composite, lean']
/** Yield of a roast of lean alone, of the cut's size and without its bone, less what protein that is kept gives. */
export const leanYields = (): Sample[] =>
  published<{ rows: YieldRow[] }>('lean-yields').rows.map((r) => {
    const cut = { ...(cutById(r.cut) as Cut), composition: LEAN, boneShare: 0 }
    const cook = { cut, massKg: cut.atMassKg, startC: 4, ovenC: 162.8, endC: 71.1, restMin: 15 }
    return { label: r.item, error: 1 - ovenRun(cook).lossFrac - r.protein_raw / r.protein_roasted }
  })
