import { readQuantity } from '../units'

const OUNCE = readQuantity('1 oz', 'mass')
const OUNCE_KG = OUNCE.ok ? OUNCE.si : Number.NaN
const QUARTERS = ['', '¼', '½', '¾']

/** Ounces to the quarter, pounds and ounces from a pound up: "1¼ oz", "2 lb 3 oz". */
function usMass(kg: number): string {
  const quarters = Math.max(1, Math.round((kg / OUNCE_KG) * 4))
  if (quarters < 64) return `${Math.floor(quarters / 4) || ''}${QUARTERS[quarters % 4]} oz`
  const ounces = Math.round(kg / OUNCE_KG)
  return ounces % 16 === 0 ? `${ounces / 16} lb` : `${Math.floor(ounces / 16)} lb ${ounces % 16} oz`
}
/** Grams to 5 below a kilogram. */
function metricMass(kg: number): string {
  if (kg >= 1) return `${Number(kg.toFixed(1))} kg`
  return kg < 0.05 ? `${Math.round(kg * 1000)} g` : `${Math.round(kg * 200) * 5} g`
}

/** An amount as written, and the same in the other unit system: the author's own in brackets, or reckoned where it is a mass. */
export function bothMasses(much: string): { much: string; other: string } {
  const given = much.match(/^(.*\d.*?)\s*\((.*\d.*)\)$/)
  if (given) return { much: given[1] ?? much, other: given[2] ?? '' }
  const read = readQuantity(much, 'mass')
  if (!read.ok) return { much, other: '' }
  return { much, other: /\d\s*(?:lbs?|oz)\b/i.test(much) ? metricMass(read.si) : usMass(read.si) }
}
