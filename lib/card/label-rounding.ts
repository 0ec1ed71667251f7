import type { Nutrient } from './foods'

/** To what a nutrient of a serving is rounded on a label of the United States [cfr-101-9]. */

const to = (step: number, x: number) => String(Number((Math.round(x / step + 1e-9) * step).toFixed(1)))

const calories = (x: number) => (x < 5 ? '0' : to(x <= 50 ? 5 : 10, x))
const fat = (x: number) => (x < 0.5 ? '0' : to(x < 5 ? 0.5 : 1, x))
const cholesterol = (x: number) => (x < 2 ? '0' : x <= 5 ? 'less than 5' : to(5, x))
const sodium = (x: number) => (x < 5 ? '0' : to(x <= 140 ? 5 : 10, x))
const grams = (x: number) => (x < 0.5 ? '0' : x < 1 ? 'less than 1' : to(1, x))

const RULES: Readonly<Record<Nutrient, (x: number) => string>> = {
  kcal: calories,
  protein: grams,
  fat,
  saturated: fat,
  cholesterol,
  carbohydrate: grams,
  fibre: grams,
  sugars: grams,
  sodium,
}
export const labelAmount = (nutrient: Nutrient, perServing: number) => RULES[nutrient](perServing)
