/** What conduction alone would say of the timetables: the skin at 100 °C from the first minute, and one factor for all rows. */
import { radialMesh } from '../../lib/model/conduction'
import { type Cut, cutById } from '../../lib/model/cuts'
import { propertiesWithBone, propertyTable } from '../../lib/model/materials'
import { Meat, matterOf } from '../../lib/model/meat'
import { geometryOf } from '../../lib/model/shape'
import type { SkinLaw } from '../../lib/model/surface'
import { kilograms } from '../../lib/units'
import { CHART, type ChartRow, type ChartSample, partSizes, sampleOf, scoreOf } from './measure'

const SKIN_C = 100
const HELD_WPM2K = 1e5
const STEP_S = 10
const LONGEST_S = 24 * 3600
/** Brings the median of the held-out rows near 1: the factor that our own trial of skin laws found for conduction alone. */
const FACTOR = 1.4

const held: SkinLaw = (out, frontC) => {
  out.net_WpM2 = HELD_WPM2K * (SKIN_C - frontC)
  out.slope_WpM2K = -HELD_WPM2K
}
function minutes(row: ChartRow): number {
  const cut = cutById(row.cut) as Cut
  const { radiusM, exponent } = geometryOf(cut, kilograms(row.mass_kg), partSizes(cut, row)).radialAt(1)
  const rhoKgpM3 = propertiesWithBone(cut.composition, cut.boneShare, row.start_C).rho_KgpM3
  const table = propertyTable(cut.composition, cut.boneShare)
  const matter = matterOf({ ...table, rhoKgpM3, water: 0, fat: 0, boneShare: cut.boneShare, lethalityPerS: () => 0 })
  const scale = { k: 1, c: 1, juice: 0, feed: 0, boilingC: Infinity }
  const meat = new Meat(matter, radialMesh(exponent), radiusM, row.start_C, held, scale)
  const around = { airC: SKIN_C, radiantC: SKIN_C, h_WpM2K: 0, vapourPa: 0, sealed: true }
  for (let s = 0; s < LONGEST_S; s += STEP_S) {
    if ((meat.nodesC[0] as number) >= row.endpoint_C) return s / 60
    meat.try(STEP_S, around, around)
    meat.accept()
  }
  return Infinity
}
export const conductionSamples = (): ChartSample[] =>
  CHART.filter((row) => row.role === 'score').map((row) => sampleOf(row, FACTOR * minutes(row)))
export const conductionScore = () => scoreOf(conductionSamples())
