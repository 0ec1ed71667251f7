import { readQuantity } from '../units'

const of = (written: string, dimension: 'mass' | 'volume') => {
  const read = readQuantity(written, dimension)
  return read.ok ? read.si : Number.NaN
}
/** Kitchen measures in ml, an ounce in grams. */
export const ML_PER = {
  tsp: of('1 tsp', 'volume') * 1e6,
  tbsp: of('1 tbsp', 'volume') * 1e6,
  cup: of('1 cup', 'volume') * 1e6,
} as const
export const G_PER_OZ = of('1 oz', 'mass') * 1000
