import { CUSTOM_SHAPES } from '../model/custom-cut'
import { ANIMALS, BONE_PLACES } from '../model/cut'
import type { Frac } from '../units'
import { FAT_SHARE, MOST_BONE } from './bounds'
import { quantity, record, text, word } from './fields'

/** What a shoot file says of a cut that the catalogue does not have; its thickness stands beside it, measured. */
export const OWN_CUT = record('a cut of your own', {
  name: text('the name of the cut', 60, 1),
  animal: word('an animal', ANIMALS),
  shape: word('a shape', CUSTOM_SHAPES),
  fat: quantity<Frac>('share', FAT_SHARE).optional(),
  bone: quantity<Frac>('share', MOST_BONE).optional(),
  boneAt: word('a place of the bone', BONE_PLACES).optional(),
})
