/** A twin: a plan as the crew wrote it, and a made-up cook of it whose truth the forecaster is not told. */
import type { CookerKind, CookPlan } from '../../lib/model/cook'
import { type Chance, chanceOf } from '../../lib/model/random'
import type { Mark, Reading } from '../../lib/model/readings'
import { celsius, frac, kilograms, metresPerSecond, minutes, seconds } from '../../lib/units'

export const TWIN_KINDS = ['steady', 'vents-open', 'fuel-fade', 'probe-from-start', 'probe-at-half'] as const
export type TwinKind = (typeof TWIN_KINDS)[number]
export const FAMILIES = ['A', 'B'] as const
export type Family = (typeof FAMILIES)[number]

export interface Twin {
  readonly plan: CookPlan
  readonly readings: readonly Reading[]
  readonly marks: readonly Mark[]
  readonly probeInS: number
  readonly pullS: number
  readonly sliceS: number
  readonly sliceCoreC: number
  /** What the probe would read then were it left in. */
  readonly sliceProbeC: number
}

export interface Roasted {
  readonly cut: string
  readonly kg: readonly [number, number]
  readonly cooker: CookerKind
  readonly atC: number
  readonly coreC: number
}
export const ROASTS: readonly Roasted[] = [
  { cut: 'lamb-leg-bone-in', kg: [2.2, 3.4], cooker: 'kettle-charcoal', atC: 150, coreC: 50 },
  { cut: 'pork-loin-boneless', kg: [1.5, 3], cooker: 'pellet', atC: 160, coreC: 60 },
  { cut: 'beef-rib-bone-in', kg: [3, 4.5], cooker: 'oven', atC: 165, coreC: 50 },
  { cut: 'turkey-breast-bone-in', kg: [2, 3.2], cooker: 'kettle-charcoal', atC: 165, coreC: 68 },
  { cut: 'beef-top-round', kg: [2, 3.5], cooker: 'gas-grill', atC: 150, coreC: 52 },
]
/** A fire that fades, or is opened up, burns charcoal. */
const FIRES = ROASTS.filter(({ cooker }) => cooker === 'kettle-charcoal')

export function planOf(kind: TwinKind, n: number, chance: Chance): CookPlan {
  const among = kind === 'vents-open' || kind === 'fuel-fade' ? FIRES : ROASTS
  return roastPlan(kind, among[n % among.length] as Roasted, chance)
}
export function roastPlan(kind: TwinKind, { cut, kg, cooker, atC, coreC }: Roasted, chance: Chance): CookPlan {
  const at = celsius(atC)
  const late = kind === 'probe-at-half'
  const mass = Math.round(10 * (kg[0] + (kg[1] - kg[0]) * chance.uniform())) / 10
  return {
    id: 'hero',
    roast: { cut, mass: kilograms(mass), start: celsius(5) },
    cooker: { kind: cooker },
    stages: [
      { do: 'preheat', at },
      {
        do: 'roast',
        at,
        until: { core: celsius(coreC) },
        ...(late ? { turn: { at: 'half' } } : {}),
        probe: { at: late ? 'turn' : 'start' },
      },
      ...(kind === 'vents-open'
        ? [{ do: 'sear', at: celsius(300), until: { after: minutes(4) }, max: minutes(15) } as const]
        : []),
      { do: 'rest', until: { after: minutes(15) } },
    ],
    surroundings: {
      air: celsius(14),
      wind: metresPerSecond(2),
      humidity: frac(0.65),
      altitude: 0 as CookPlan['surroundings']['altitude'],
    },
    lidOpenings: [],
  }
}

export const twinChance = (seed: number, family: Family, kind: TwinKind, n: number) =>
  chanceOf(seed, 1000 * FAMILIES.indexOf(family) + n, 500 + TWIN_KINDS.indexOf(kind))

/** A reading a minute, to a tenth, each with its own flicker. */
export function readingsOf(
  chance: Chance,
  {
    fromS,
    untilS,
    coreC,
    cookerC,
  }: {
    readonly fromS: number
    readonly untilS: number
    readonly coreC: (timeS: number) => number
    readonly cookerC: (timeS: number) => number
  },
): Reading[] {
  const readings: Reading[] = []
  for (let timeS = 0; timeS <= untilS; timeS += 60) {
    const tenth = (tempC: number) => celsius(Math.round(tempC * 10) / 10)
    const core = tenth(coreC(timeS) + 0.1 * chance.normal())
    if (timeS >= fromS) readings.push({ t: seconds(timeS), sensor: 'core', tempC: core })
    readings.push({ t: seconds(timeS), sensor: 'cooker', tempC: tenth(cookerC(timeS) + 0.7 * chance.normal()) })
  }
  return readings
}

/** A row of minutes, read between them. */
export const between = (row: ArrayLike<number>, timeS: number): number => {
  const place = Math.min(row.length - 1, Math.max(0, timeS / 60))
  const i = Math.min(row.length - 2, Math.floor(place))
  const a = row[i] as number
  return a + (place - i) * ((row[i + 1] as number) - a)
}
export const firstAbove = (row: ArrayLike<number>, levelC: number, fromS: number): number => {
  for (let i = Math.max(1, Math.ceil(fromS / 60)); i < row.length; i++) {
    const now = row[i] as number
    if (now < levelC) continue
    const before = row[i - 1] as number
    return before >= levelC
      ? Math.max(fromS, 60 * (i - 1))
      : Math.max(fromS, 60 * (i - 1 + (levelC - before) / (now - before)))
  }
  return Infinity
}
export const targetOf = ({ stages }: CookPlan) => {
  const roast = stages.find((stage) => stage.do === 'roast')
  return roast && 'core' in roast.until ? roast.until.core : Number.NaN
}

/** Fuel at meat-on, kg, with which a kettle fades in the second half of the roast: about 0.25 kg an hour holds it. */
export const fadingKg = (plan: CookPlan, chance: Chance) => (targetOf(plan) > 60 ? 0.75 : 0.5) + 0.2 * chance.uniform()
