import type { Animal } from '../model/cuts'
import type { SourceId } from '../model/sources'
import { type Celsius, celsius, formatTempBoth, fromFahrenheit } from '../units'

/** What the food-safety authority asks of a whole cut: a level of the coldest point, then a rest. */
export interface Minimum {
  readonly level: Celsius
  readonly restMin: number
  readonly source: SourceId
}
const POULTRY: readonly Animal[] = ['turkey', 'chicken', 'duck', 'goose']
export const isPoultry = (animal: Animal) => POULTRY.includes(animal)

/** [fsis-safe-minimum] 145 °F and 3 minutes for whole cuts of beef, pork, veal and lamb; 165 °F for all poultry. */
export function minimumFor(animal: Animal): Minimum {
  return isPoultry(animal)
    ? { level: fromFahrenheit(165), restMin: 0, source: 'fsis-safe-minimum' }
    : { level: fromFahrenheit(145), restMin: 3, source: 'fsis-safe-minimum' }
}
/** "63 °C / 145 °F, then 3 minutes". */
export const minimumWords = ({ level, restMin }: Minimum) =>
  restMin > 0 ? `${formatTempBoth(celsius(level))}, then ${restMin} minutes` : formatTempBoth(celsius(level))
