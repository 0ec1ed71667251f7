import type { CookerKind, CookPlan } from '../model/cook'
import type { Forecast, Window } from '../model/forecast'
import { windowOf } from '../model/quantiles'
import { toCookPlan } from '../plan/cook-plan'
import { cookerName } from '../plan/moments'
import type { Cook, Shoot } from '../plan/shoot'
import { formatLength, formatMass, formatTempBoth, kilograms, type Metres, metres } from '../units'
import { stagesOf } from './figures'
import { goesIn, otherCook, pullOf, thicknessOf } from './other-cook'
import { aboutTime, timeWords } from './wording'

/** One forecast: how long from meat-on to the pull temperature. */
export interface SizeCell {
  readonly window: Window
  /** Early to late (5 to 95 %): "2 h 05 to 3 h 10"; or that it does not get there. */
  readonly words: string
  /** "2 h 35"; null where most cooks do not get there. */
  readonly likely: string | null
  readonly filmed: boolean
}
export interface SizeRow {
  readonly thickness: Metres
  /** "11 cm / 4¼ in" and "about 3.2 kg / 7.1 lb". */
  readonly thick: string
  readonly weight: string
  readonly filmed: boolean
  readonly cells: readonly SizeCell[]
}
/** Times for the reader's own size and cooker, each a forecast of that cook. */
export interface SizeTable {
  readonly caption: string
  readonly columns: readonly { readonly kind: CookerKind; readonly words: string }[]
  readonly rows: readonly SizeRow[]
  readonly note: string
}
/** What the table is made from before anything is forecast: rows of plans, a plan for each column. */
export interface SizeGrid {
  readonly caption: string
  readonly columns: readonly CookerKind[]
  readonly rows: readonly {
    readonly thickness: Metres
    readonly mass: number
    readonly filmed: boolean
    readonly plans: readonly CookPlan[]
  }[]
}

/** What readers own most. Common practice, no source. */
const AT_HOME: readonly CookerKind[] = ['oven', 'convection-oven', 'kettle-charcoal']
const COLUMNS = 3
/** Rows to either side of the filmed one. */
const BESIDE = 2
const THIN_M = 0.06
const THINNEST_M = 0.015

/** The filmed thickness and the nearest whole centimetres about it (halves of thin meat), none nearer than half a step. */
export function thicknessesAbout(filmed: Metres): Metres[] {
  const step = filmed < THIN_M ? 0.005 : 0.01
  const steps = (from: number, to: number) =>
    Array.from({ length: to - from + 1 }, (_, i) => Math.round((from + i) * step * 1000) / 1000)
  const near = Math.round(filmed / step)
  const others = steps(near - BESIDE - 1, near + BESIDE + 1).filter(
    (m) => Math.abs(m - filmed) >= step / 2 - 1e-9 && m >= THINNEST_M,
  )
  const below = others.filter((m) => m < filmed).slice(-BESIDE)
  const above = others.filter((m) => m > filmed).slice(0, BESIDE)
  return [...below, filmed, ...above].map(metres)
}

export function sizeGrid(shoot: Shoot, filmed: Forecast): SizeGrid {
  const cook = shoot.cooks[0] as Cook
  const own = cook.cooker.kind
  const columns = [own, ...AT_HOME.filter((kind) => kind !== own && goesIn(cook, kind))].slice(0, COLUMNS)
  const thick = thicknessOf(cook.roast)
  const until = stagesOf(filmed, 'roast').at(-1)?.until
  const byProbe = until !== undefined && 'core' in until
  const rows = thicknessesAbout(thick).map((thickness) => {
    const filmedRow = thickness === thick
    const cooks = columns.map((cooker) => otherCook(cook, pullOf(filmed), { thickness, cooker }))
    const plans = cooks.map((each, i) => (filmedRow && i === 0 && byProbe ? filmed.cook : toCookPlan(shoot, each)))
    return { thickness, mass: cooks[0]?.roast.mass ?? cook.roast.mass, filmed: filmedRow, plans }
  })
  return { caption: `From the meat going on until the probe reads ${formatTempBoth(pullOf(filmed))}`, columns, rows }
}

export const pullWindow = (forecast: Forecast): Window =>
  windowOf(forecast.moments.pull ?? Float64Array.of(Number.POSITIVE_INFINITY))

/** The grid with each plan's time; `windows` row by row. */
export function tableOf(grid: SizeGrid, windows: readonly (readonly Window[])[]): SizeTable {
  return {
    caption: grid.caption,
    columns: grid.columns.map((kind) => ({ kind, words: cookerName(kind) })),
    rows: grid.rows.map(({ thickness, mass, filmed }, i) => ({
      thickness,
      thick: rulerWords(thickness),
      weight: `about ${formatMass(kilograms(mass))} / ${formatMass(kilograms(mass), 'us')}`,
      filmed,
      cells: (windows[i] ?? []).map((window, k) => cellOf(window, filmed && k === 0)),
    })),
    note: 'Nine cooks in ten fall between the two times. Thickness decides, weight hardly: go by the probe.',
  }
}
function cellOf(window: Window, filmed: boolean): SizeCell {
  const { early, likely, late } = window
  if (early === null || likely === null) return { window, words: 'does not get there', likely: null, filmed }
  const words = timeWords({ low: early, high: late ?? Number.POSITIVE_INFINITY })
  return { window, words, likely: aboutTime(likely), filmed }
}

/** Every cell is the forecast of its own plan, by the function given. */
export function sizeTable(shoot: Shoot, forecastOf: (plan: CookPlan) => Forecast): SizeTable {
  const filmed = forecastOf(toCookPlan(shoot, shoot.cooks[0] as Cook))
  const grid = sizeGrid(shoot, filmed)
  return tableOf(
    grid,
    grid.rows.map(({ plans }) => plans.map((plan) => pullWindow(plan === filmed.cook ? filmed : forecastOf(plan)))),
  )
}

const INCH_M = 0.0254
const QUARTERS = ['', '¼', '½', '¾']
/** "11 cm / 4¼ in": quarters are what a ruler shows, tenths where the meat is thin. */
export function rulerWords(thickness: Metres): string {
  const metric = formatLength(thickness)
  if (thickness < THIN_M) return `${metric} / ${formatLength(thickness, 'us')}`
  const quarters = Math.round((thickness / INCH_M) * 4)
  return `${metric} / ${Math.floor(quarters / 4)}${QUARTERS[quarters % 4]} in`
}
