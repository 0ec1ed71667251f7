/** The least temperatures that authorities print for a roast, each with its source. */
import { fromFahrenheit } from '../units'
import type { Animal, Cut } from './cuts'
import { type Dwell, dwell, isPoultry } from './dwell-table'
import type { SourceId } from './sources'
import { longestAboveS } from './time-at-heat'

export type Whose = 'USDA FSIS' | 'FDA Food Code' | 'UK Food Standards Agency'
export interface Minimum {
  readonly tempC: number
  readonly restMin: number
  readonly source: SourceId
  /** Whose numbers these are. */
  readonly authority: 'US'
  /** False where we hold no table for the authority that was asked for: say whose is shown, send the reader to the local one. */
  readonly asAsked: boolean
}

/** [fsis-safe-minimum] 165 °F for poultry, 145 °F for fish, 145 °F and 3 min of rest for whole cuts. [fsis-game-2011] 160 °F for game. */
function consumer(animal: Animal): { readonly atF: number; readonly restMin: number; readonly source: SourceId } {
  if (isPoultry(animal)) return { atF: 165, restMin: 0, source: 'fsis-safe-minimum' }
  if (animal === 'salmon') return { atF: 145, restMin: 0, source: 'fsis-safe-minimum' }
  if (animal === 'venison') return { atF: 160, restMin: 0, source: 'fsis-game-2011' }
  return { atF: 145, restMin: 3, source: 'fsis-safe-minimum' }
}
export function minimumFor(cut: Pick<Cut, 'animal'>, authority = 'US'): Minimum {
  const { atF, restMin, source } = consumer(cut.animal)
  return { tempC: fromFahrenheit(atF), restMin, source, authority: 'US', asAsked: authority === 'US' }
}
/** Whether a coldest point keeps the minimum: there, and not below it again for as long as the rest asked. */
export const meetsMinimum = (
  coldestC: ArrayLike<number>,
  stepS: number,
  { tempC, restMin }: Pick<Minimum, 'tempC' | 'restMin'>,
) => {
  const heldS = longestAboveS(coldestC, stepS, tempC)
  return heldS > 0 && heldS >= restMin * 60
}

/** Pierced meat, and boned and rolled meat by the catalogue's own word for it: what lay on the surface is inside. */
export const surfaceInside = (cut: Pick<Cut, 'name'>, pierced = false) => pierced || /\brolled\b/.test(cut.name)

/** [fda-food-code-2017] 3-401.11(B): °F and seconds for whole roasts; the time may include the rise after the oven. */
export const FOOD_CODE_ROASTS: readonly Dwell[] = [
  dwell(130, 6720),
  dwell(131, 5340),
  dwell(133, 3360),
  dwell(135, 2160),
  dwell(136, 1680),
  dwell(138, 1080),
  dwell(140, 720),
  dwell(142, 480),
  dwell(144, 300),
  dwell(145, 240),
  dwell(147, 134),
  dwell(149, 85),
  dwell(151, 54),
  dwell(153, 34),
  dwell(155, 22),
  dwell(157, 14),
  dwell(158, 0),
]
/** [fda-food-code-2017] 3-401.11(A)(2): mechanically tenderised and injected meat; any one of these. */
export const FOOD_CODE_PIERCED: readonly Dwell[] = [dwell(145, 180), dwell(150, 60), dwell(155, 17), dwell(158, 0)]
/** [fda-food-code-2017] 3-401.11(A)(1), (A)(3): fish and farmed game; poultry and wild game. */
const FOOD_CODE_FISH: readonly Dwell[] = [dwell(145, 15)]
const FOOD_CODE_HOTTEST: readonly Dwell[] = [dwell(165, 0)]
/** [uk-fsa-cooking] 70 °C for 2 min or what counts as the same; rolled joints are not for serving rare. */
export const UK_THROUGHOUT: readonly Dwell[] = (
  [
    [60, 2700],
    [65, 600],
    [70, 120],
    [75, 30],
    [80, 6],
  ] as const
).map(([tempC, heldS]) => dwell(tempC * 1.8 + 32, heldS))

export type RuleId =
  | 'consumer-minimum'
  | 'food-code-roast'
  | 'food-code-pierced'
  | 'food-code-poultry'
  | 'food-code-fish'
  | 'food-code-farmed-game'
  | 'food-code-wild-game'
  | 'uk-throughout'
/** One printed rule on the heat that the coldest point must have had: any one of `asks` is enough. */
export interface HeatRule {
  readonly id: RuleId
  readonly whose: Whose
  readonly asks: readonly Dwell[]
  readonly source: SourceId
}
const foodCode = (id: RuleId, asks: readonly Dwell[]): HeatRule => ({
  id,
  whose: 'FDA Food Code',
  asks,
  source: 'fda-food-code-2017',
})

/** Every printed rule that speaks of this roast. Pierced beef has the same minimum as whole, by a rule of its own. [fsis-tenderised-2016] */
export function heatRules(animal: Animal, inside: boolean, pierced = false): readonly HeatRule[] {
  const { atF, restMin, source: whole } = consumer(animal)
  const source = pierced && animal === 'beef' ? 'fsis-tenderised-2016' : whole
  const home: HeatRule = { id: 'consumer-minimum', whose: 'USDA FSIS', asks: [dwell(atF, restMin * 60)], source }
  const throughout: HeatRule = {
    id: 'uk-throughout',
    whose: 'UK Food Standards Agency',
    asks: UK_THROUGHOUT,
    source: 'uk-fsa-cooking',
  }
  return [home, ...retail(animal, inside), ...(inside ? [throughout] : [])]
}
function retail(animal: Animal, inside: boolean): readonly HeatRule[] {
  if (isPoultry(animal)) return [foodCode('food-code-poultry', FOOD_CODE_HOTTEST)]
  if (animal === 'salmon') return [foodCode('food-code-fish', FOOD_CODE_FISH)]
  if (animal === 'venison')
    return [
      foodCode('food-code-farmed-game', FOOD_CODE_FISH),
      foodCode('food-code-wild-game', FOOD_CODE_HOTTEST),
      ...(inside ? [foodCode('food-code-pierced', FOOD_CODE_PIERCED)] : []),
    ]
  return [
    foodCode('food-code-roast', FOOD_CODE_ROASTS),
    ...(inside ? [foodCode('food-code-pierced', FOOD_CODE_PIERCED)] : []),
  ]
}
