/** The ledger's lines on time, holding and cooling: what is said of meat before it is sliced and of what is kept. */
import { type CoolingAdvice, TWO_STEP, toldThickness } from '../model/cooling-rules'
import type { Forecast, Spread } from '../model/forecast'
import type { HotHold } from '../model/hot-hold'
import type { LedgerVerdict } from '../model/safety-ledger'
import type { ComeUp, SafetySummary } from '../model/safety-summary'
import { SOURCES, type SourceId } from '../model/sources'
import {
  type Celsius,
  formatDuration,
  formatLength,
  formatMass,
  formatShare,
  fromFahrenheit,
  type Seconds,
  seconds,
  type UnitSystem,
} from '../units'

/** One rule in one line; the details are for who unfolds it. */
export interface SafetyLine {
  readonly id: string
  readonly rule: string
  readonly asks: string
  readonly gives: string
  /** In words, so that nothing hangs on a colour. */
  readonly verdict: string
  readonly source: string
  readonly details: readonly string[]
}
export const VERDICT: Readonly<Record<LedgerVerdict, string>> = {
  kept: 'kept',
  'kept-with-care': 'kept, with care',
  'kept-in-part': 'kept in part',
  'not-kept': 'not kept',
}
const SHOWN = 'shown only'
export const sourceOf = (id: SourceId) => `${SOURCES[id].reference}. Held as: ${SOURCES[id].standing}.`

/** What a telling needs besides its row. */
export interface Telling {
  readonly f: Forecast
  readonly safety: SafetySummary
  readonly temp: (c: number, digits?: number) => string
  readonly units: UnitSystem
}
export const range = (low: string, high: string) => (low === high ? low : `${low} to ${high}`)
const spreadWords = <Q extends number>({ low, high }: Spread<Q>, print: (q: Q) => string) =>
  range(print(low), print(high))
export const ofRuns = (share: number) => `in ${formatShare(share)} of runs`

export function comeUpLine({ temp }: Telling, { time, within, share, verdict, source }: ComeUp): SafetyLine {
  return {
    id: 'come-up',
    rule: 'USDA FSIS: warming up',
    asks: `${temp(10)} to ${temp(54.4)} within ${formatDuration(within)}`,
    gives: `${spreadWords(time, formatDuration)}, ${ofRuns(share)}`,
    verdict: VERDICT[verdict],
    source: sourceOf(source),
    details: [
      'Of the coldest point. A rule for plants that cook slowly; it is held from memory, so it is kept with care at best.',
    ],
  }
}

export function growthLine({ safety, temp }: Telling): SafetyLine {
  return {
    id: 'time-in-range',
    rule: 'FDA Food Code: the range in which germs grow',
    asks: `${temp(5)} to ${temp(57)}: no limit on cooking`,
    gives: spreadWords(safety.timeIn5to57, formatDuration),
    verdict: SHOWN,
    source: sourceOf('fda-food-code-2017'),
    details: ['Of the coldest point, from meat on to the first slice. No authority we hold limits it as such.'],
  }
}

export function holdLine({ temp }: Telling, { leastC, coldest, keptShare, verdict, source }: HotHold): SafetyLine {
  const lower = leastC < fromFahrenheit(135)
  return {
    id: 'hot-hold',
    rule: 'FDA Food Code: held hot',
    asks: `${temp(leastC)} or hotter`,
    gives: `${spreadWords<Celsius>(coldest, (c) => temp(c))} at the coldest, ${ofRuns(keptShare)}`,
    verdict: VERDICT[verdict],
    source: sourceOf(source),
    details: [
      lower
        ? `Food held hot stays at ${temp(57.2)}; a roast cooked by the code’s own table may come down to ${temp(54.4)}.`
        : `Only a roast cooked by the code’s own table may come down to ${temp(54.4)}.`,
    ],
  }
}

const reached = (s: Seconds | null) => (s === null ? 'never' : `after ${formatDuration(s)}`)
export function coolingLine({ temp, f, units }: Telling, cooling: CoolingAdvice): SafetyLine {
  const [fridge, ice] = (['fridge', 'ice-bath'] as const).map((id) => cooling.whole.find((w) => w.chill === id))
  const [warm, cold] = TWO_STEP.steps.map(({ toC }) => temp(toC))
  const whole = (w: typeof fridge) => (w ? `${warm} ${reached(w.to21)}, ${cold} ${reached(w.to5)}` : 'not reckoned')
  const b = fridge?.keepsAppendixB.some(Boolean) ?? false
  return {
    id: 'cooling',
    rule: 'FDA Food Code: cooling what is kept',
    asks: `from ${temp(TWO_STEP.fromC)} to ${warm} in 2 h, to ${cold} in 6 h in all`,
    gives: `left whole in a refrigerator: ${whole(fridge)}`,
    verdict: fridge?.keepsTwoStep ? VERDICT['kept-with-care'] : VERDICT['not-kept'],
    source: sourceOf(cooling.source),
    details: [
      leftoversOf(units, cooling),
      `Whole in a bag in iced water: ${whole(ice)}.`,
      `Of the hottest point, the whole ${formatMass(f.cook.roast.mass, units)} left, from ${temp(cooling.fromC)}; the clock runs from ${temp(TWO_STEP.fromC)} or from the fridge door, whichever is later. The refrigerator’s still air at ${temp(4)} is an estimate, a quarter either way.`,
      `FSIS Appendix B (${temp(54.4)} to ${temp(26.7)} in 1 h 30 min and ${temp(4.4)} in 5 h more, or ${temp(48.9)} to ${temp(26.7)} in 1 h and ${temp(12.8)} in 6 h in all): whole in a refrigerator ${b ? 'one of them is kept' : 'neither is kept'}.`,
    ],
  }
}
export function leftoversOf(units: UnitSystem, cooling: CoolingAdvice): string {
  const words = (id: 'fridge' | 'ice-bath') => {
    const m = cooling.greatest.find((g) => g.chill === id)?.thickness
    return m ? `no thicker than ${formatLength(toldThickness(m), units)}` : 'in thin slices'
  }
  const whole = cooling.whole.find((w) => w.chill === 'fridge')
  const first = whole?.keepsTwoStep ? 'It may be kept whole in a refrigerator' : 'Do not put it away whole'
  return `${first}: keep slices ${words('fridge')} in one layer in a refrigerator, or bagged pieces ${words('ice-bath')} in iced water.`
}

export function leftOutLine({ f, temp }: Telling): SafetyLine {
  const hotC = fromFahrenheit(90)
  const { air } = f.cook.restSurroundings ?? f.cook.surroundings
  return {
    id: 'left-out',
    rule: 'USDA FSIS: left out after slicing',
    asks: `no more than 2 h; 1 h above ${temp(hotC)}`,
    gives: `air at ${temp(air)}: ${formatDuration(seconds(air > hotC ? 3600 : 7200))}`,
    verdict: SHOWN,
    source: sourceOf('fsis-safe-minimum'),
    details: ['About food left out, not about cooking; how long it stands is for the day to say.'],
  }
}
