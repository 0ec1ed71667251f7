import type { Cut } from '../model/cuts'

/** 100 g of meat with its fat, off the bone; g, and mg of cholesterol and sodium. Null where no table gives it. */
export interface MeatRow {
  readonly number: string
  readonly protein: number
  readonly fat: number
  readonly saturated: number | null
  readonly cholesterol: number | null
  readonly sodium: number | null
}
export interface MeatRows {
  /** "pork loin": what the table calls it. */
  readonly as: string
  readonly raw: MeatRow
  /** The same cut roasted, where the table has it. */
  readonly roasted: MeatRow | null
}
const row = (number: string, protein: number, fat: number, saturated: number, cholesterol: number, sodium: number) => ({
  number,
  protein,
  fat,
  saturated,
  cholesterol,
  sodium,
})

/** Raw and roasted, lean and fat, birds with their skin [usda-sr]; those with an "m" [usda-sr-memory]. */
const LAMB_LEG: MeatRows = {
  as: 'leg of lamb',
  raw: row('17011', 17.91, 17.07, 7.43, 69, 56),
  roasted: row('17012', 25.55, 16.48, 6.89, 93, 66),
}
const PORK_SHOULDER: MeatRows = {
  as: 'pork shoulder',
  raw: row('10070', 17.18, 17.99, 6.24, 71, 65),
  roasted: row('10071', 23.28, 21.39, 7.86, 90, 68),
}
const BEEF_RIB: MeatRows = { as: 'beef rib eye', raw: row('13095', 17.51, 22.07, 9, 68, 56), roasted: null }
export const MEAT_ROWS: Readonly<Record<string, MeatRows>> = {
  'lamb-leg-bone-in': LAMB_LEG,
  'lamb-leg-boneless': LAMB_LEG,
  'lamb-rack': {
    as: 'lamb rib',
    raw: row('17029', 14.52, 34.39, 15.16, 76, 56),
    roasted: row('17031', 21.12, 29.82, 12.77, 97, 73),
  },
  'lamb-shoulder-bone-in': {
    as: 'lamb shoulder',
    raw: row('17035', 16.58, 21.45, 9.28, 72, 61),
    roasted: row('17038', 22.51, 19.97, 8.44, 92, 66),
  },
  'pork-loin-bone-in': {
    as: 'pork loin',
    raw: row('10020', 19.74, 12.58, 4.36, 63, 50),
    roasted: row('10023', 27.09, 14.65, 5.37, 82, 59),
  },
  'pork-loin-boneless': {
    as: 'pork top loin',
    raw: row('10062', 21.55, 6.94, 2.45, 67, 48),
    roasted: row('10065', 26.45, 8.82, 2.839, 80, 46),
  },
  'pork-shoulder-bone-in': PORK_SHOULDER,
  'pork-shoulder-boneless': PORK_SHOULDER,
  'pork-leg-bone-in': {
    as: 'leg of pork',
    raw: row('10008', 17.43, 18.87, 6.54, 73, 47),
    roasted: row('10009', 26.83, 17.61, 6.47, 94, 60),
  },
  'beef-rib-bone-in': BEEF_RIB,
  'beef-rib-boneless': BEEF_RIB,
  'veal-leg-boneless': {
    as: 'leg of veal',
    raw: row('17094', 20.98, 3.08, 1.18, 78, 63),
    roasted: row('17098', 27.7, 4.65, 1.84, 103, 68),
  },
  'venison-haunch-boneless': {
    as: 'deer',
    raw: row('17164m', 22.96, 2.42, 0.95, 85, 51),
    roasted: row('17165m', 30.21, 3.19, 1.25, 112, 54),
  },
  'turkey-whole': {
    as: 'turkey with its skin',
    raw: row('05165', 21.64, 5.64, 1.461, 72, 112),
    roasted: row('05166', 28.55, 7.39, 2.155, 109, 103),
  },
  'chicken-whole': {
    as: 'chicken with its skin',
    raw: row('05006m', 18.6, 15.06, 4.31, 75, 70),
    roasted: row('05009m', 27.3, 13.6, 3.79, 88, 82),
  },
  'duck-whole': {
    as: 'duck with its skin',
    raw: row('05139', 11.49, 39.34, 13.22, 76, 63),
    roasted: row('05140', 18.99, 28.35, 9.67, 84, 59),
  },
  'goose-whole': {
    as: 'goose with its skin',
    raw: row('05146', 15.86, 33.62, 9.78, 80, 73),
    roasted: row('05147', 25.16, 21.92, 6.87, 91, 70),
  },
  'salmon-side': { as: 'farmed salmon', raw: row('15236m', 20.42, 13.42, 3.05, 55, 59), roasted: null },
}

/** Of these the catalogue has a composition of their own; of others it has that of another animal. */
const THEIR_OWN: readonly string[] = ['beef', 'pork', 'lamb', 'turkey']

/** What the cut is made of: by the nutrient table, else protein and fat alone by what the model reckons with. */
export function meatRowsOf({ id, name, animal, composition }: Cut): MeatRows | null {
  const rows = MEAT_ROWS[id]
  if (rows || !THEIR_OWN.includes(animal)) return rows ?? null
  const { protein, fat } = composition
  const rest = { saturated: null, cholesterol: null, sodium: null }
  return { as: name, raw: { number: '', protein: protein * 100, fat: fat * 100, ...rest }, roasted: null }
}
