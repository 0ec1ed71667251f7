import { CUSTOM } from '../model/custom-cut'
import type { Cut } from '../model/cut'
import { boxShare, solidVolumeM3 } from '../model/shape'
import { sidesOf } from '../model/sides'
import type { Problem } from '../refusals'
import { formatLength, formatMass, metres } from '../units'
import type { Cook } from './shoot'

/** What is wrong between the fields of a cut of one's own, or of one that should not be there. */
export function checkOwnCut(cook: Cook, cut: Cut | undefined, path: string): Problem[] {
  const { roast } = cook
  const at = (field: string, sentence: string): Problem[] => [{ pointer: `${path}/roast/${field}`, sentence }]
  if (roast.cut !== CUSTOM) {
    if (roast.custom === undefined || cut === undefined) return []
    return at(
      'custom',
      `Leave this out: ${cut.name}, is in the catalogue. For a cut of your own write "cut": "custom".`,
    )
  }
  if (roast.custom === undefined || cut === undefined)
    return at(
      'custom',
      'A cut of your own needs to be described. Write "custom": { "name": "saddle of hogget", "animal": "lamb", "shape": "oval" }.',
    )
  const place =
    roast.custom.boneAt !== undefined && !roast.custom.bone
      ? at('custom/boneAt', 'This says where the bone lies, but not how much there is. Write "bone": "15 %" beside it.')
      : []
  return [...place, ...fits(cook, cut, at)]
}

/** Longer than that no grate is, shorter than that is a slip of the unit. */
const LONGEST_M = 1.2
const SHORTEST_PER_THICKNESS = 0.4

function fits({ roast }: Cook, cut: Cut, at: (field: string, sentence: string) => Problem[]): Problem[] {
  if (roast.thickness === undefined)
    return at(
      'thickness',
      'A cut of your own needs its thickness. Measure the thickest place as it lies, and write it such as "9 cm".',
    )
  const volumeM3 = solidVolumeM3(cut, roast.mass)
  const { half } = sidesOf(cut, volumeM3, boxShare(cut.exponents), roast.mass, roast)
  const [thick, wide, long] = half.map((side) => formatLength(metres(2 * side)))
  const [a, , c] = half
  if (2 * c <= LONGEST_M && c >= SHORTEST_PER_THICKNESS * a) return []
  return at(
    'thickness',
    `${thick} thick and ${wide} wide, ${formatMass(roast.mass)} would be ${long} long. Check the weight and the thickness.`,
  )
}
