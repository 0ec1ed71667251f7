/** The catalogue of cuts. A cut of one's own is made in custom-cut.ts; `cutOf` there gives either. */
import { type Cut, toCut } from './cut'
import { BEEF } from './cuts-beef'
import { OTHERS } from './cuts-others'
import { PORK_AND_LAMB } from './cuts-pork-lamb'

export type { Animal, Cut } from './cut'

export const CUTS: readonly Cut[] = Object.entries({ ...BEEF, ...PORK_AND_LAMB, ...OTHERS }).map(([id, row]) =>
  toCut(id, row),
)
const BY_ID = new Map(CUTS.map((cut) => [cut.id, cut]))
export const cutById = (id: string): Cut | undefined => BY_ID.get(id)
