/** How fast authorities want cooked meat cold, and how thick a piece may be that keeps it. */
import { type Celsius, fromFahrenheit, type Metres, metres, type Seconds, seconds } from '../units'
import { type Chill, type CoolingCourse, coolingCourse, FRIDGE, ICE_BATH, type Piece, slab, whenAtS } from './cooling'
import type { Cut } from './cuts'
import { propertyTable } from './materials'
import type { SourceId } from './sources'

/** The clock starts when the hottest point is at `fromC`; each step is to be reached within its time. */
export interface CoolingRule {
  readonly id: 'food-code-two-step' | 'fsis-appendix-b-1' | 'fsis-appendix-b-2'
  readonly source: SourceId
  readonly fromC: Celsius
  readonly steps: readonly { readonly toC: Celsius; readonly within: Seconds }[]
}
const rule = (
  id: CoolingRule['id'],
  source: SourceId,
  fromF: number,
  steps: readonly (readonly [toF: number, hours: number])[],
): CoolingRule => ({
  id,
  source,
  fromC: fromFahrenheit(fromF),
  steps: steps.map(([toF, hours]) => ({ toC: fromFahrenheit(toF), within: seconds(hours * 3600) })),
})
/** [fda-food-code-2017] 3-501.14. */
export const TWO_STEP = rule('food-code-two-step', 'fda-food-code-2017', 135, [
  [70, 2],
  [41, 6],
])
/** [fsis-appendix-b-1999] its first option, and its second for chilling begun within 90 min. */
export const APPENDIX_B: readonly CoolingRule[] = [
  rule('fsis-appendix-b-1', 'fsis-appendix-b-1999', 130, [
    [80, 1.5],
    [40, 6.5],
  ]),
  rule('fsis-appendix-b-2', 'fsis-appendix-b-1999', 120, [
    [80, 1],
    [55, 6],
  ]),
]
/** The coldest level that any rule asks for. */
const LAST_C = fromFahrenheit(40)

/** When each step of the rule is reached, counted from its start; null for never. */
export const stepsReached = (course: CoolingCourse, { fromC, steps }: CoolingRule): readonly (Seconds | null)[] => {
  const fromS = whenAtS(course, fromC)
  return steps.map(({ toC }) => {
    const atS = whenAtS(course, toC)
    return fromS === undefined || atS === undefined ? null : seconds(atS - fromS)
  })
}
export const keepsRule = (course: CoolingCourse, wanted: CoolingRule) =>
  stepsReached(course, wanted).every((s, i) => s !== null && s <= (wanted.steps[i]?.within ?? 0))

const THINNEST_M = 0.002
const THICKEST_M = 0.2
const TO_WITHIN_M = 0.001
/** The thickest slab from this temperature that keeps a rule, cooling on both faces; nothing where none does. */
export function greatestThickness(cut: Cut, fromC: number, chill: Chill, wanted = TWO_STEP): Metres | undefined {
  const table = propertyTable(cut.composition)
  const last = wanted.steps.at(-1) as CoolingRule['steps'][number]
  const stop = { downToC: last.toC - 0.01, giveUp: { fromC: wanted.fromC, withinS: last.within } }
  // Above the rule's start its clock stands; a slab begins at the start, or it would take days to get there.
  const startC = Math.min(fromC, wanted.fromC)
  const keeps = (m: number) => keepsRule(coolingCourse(slab(table, m, startC), chill, stop), wanted)
  if (!keeps(THINNEST_M)) return undefined
  let [low, high] = [THINNEST_M, THICKEST_M]
  while (high - low > TO_WITHIN_M) {
    const middle = (low + high) / 2
    if (keeps(middle)) low = middle
    else high = middle
  }
  return metres(low)
}

export interface WholeCooling {
  readonly chill: Chill['id']
  /** Since its hottest point was at the rule's start (or since it was put to cool, where that is later). */
  readonly to21: Seconds | null
  readonly to5: Seconds | null
  readonly keepsTwoStep: boolean
  readonly keepsAppendixB: readonly boolean[]
}
export interface CoolingAdvice {
  /** Of the hottest point when sliced, in the likely cook. */
  readonly fromC: Celsius
  readonly whole: readonly WholeCooling[]
  /** Greatest thickness of a slice or piece that keeps the two-step rule, in one layer. */
  readonly greatest: readonly { readonly chill: Chill['id']; readonly thickness: Metres | null }[]
  readonly source: SourceId
}
const CHILLS = [FRIDGE, ICE_BATH]

/** Told in whole steps of 5 mm, downward. */
const TOLD_M = 0.005
export const toldThickness = (m: Metres): Metres => metres(Math.max(1, Math.floor(m / TOLD_M)) * TOLD_M)

/** What becomes of this roast, kept whole or cut up, from how it stands when sliced. */
export function coolingAdvice(cut: Cut, roast: Piece): CoolingAdvice {
  const nodes = Array.from({ length: 21 }, (_, i) => roast.atPlaceC(i / 20))
  const fromC = nodes.reduce((a, b) => Math.max(a, b))
  return {
    fromC: fromC as Celsius,
    whole: CHILLS.map((chill) => wholeCooling(roast, chill)),
    greatest: CHILLS.map((chill) => ({ chill: chill.id, thickness: greatestThickness(cut, fromC, chill) ?? null })),
    source: TWO_STEP.source,
  }
}
function wholeCooling(roast: Piece, chill: Chill): WholeCooling {
  // An ice bath passes the last level soon; air of 4 °C comes to 4.4 °C only in the end.
  const course = coolingCourse(roast, chill, { downToC: LAST_C - 0.01 })
  const [to21 = null, to5 = null] = stepsReached(course, TWO_STEP)
  return {
    chill: chill.id,
    to21,
    to5,
    keepsTwoStep: keepsRule(course, TWO_STEP),
    keepsAppendixB: APPENDIX_B.map((each) => keepsRule(course, each)),
  }
}
