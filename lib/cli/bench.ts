import { existsSync, readFileSync } from 'node:fs'
import { buildCard, checkCard } from '../card/card'
import { sizeTable } from '../card/sizes'
import { cardModel } from '../export/card'
import { run3d10mm } from '../model/calibrate-3d'
import type { CookPlan } from '../model/cook'
import { forecastCook } from '../model/forecast-cook'
import { formatDate } from '../plan/clock'
import { toCookPlan } from '../plan/cook-plan'
import { parseShootText } from '../plan/parse'
import type { Cook, Shoot } from '../plan/shoot'
import { printCard } from '../print/render'
import { seconds } from '../units'
import { benchApp } from './bench-app'
import { dayTable } from './bench-day-table'
import { benchKernels } from './bench-kernels'
import { benchLayout } from './bench-layout'
import { overlayTimesRealTime } from './bench-overlay'
import { reforecastMs } from './bench-reforecast'

type Figures = Record<string, number>
const DEMO = 'prisma/demo/leg-of-lamb.json'
/** Half-axes of a roast of about 4 kg, m: an ellipsoid a little longer than it is thick. */
const ROAST = { half: [0.065, 0.085, 0.16], exponents: [2, 2, 2] } as const

const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1] as number

async function medianMs(times: number, work: () => unknown): Promise<number> {
  const took: number[] = []
  for (let i = 0; i <= times; i++) {
    const start = performance.now()
    await work()
    if (i > 0) took.push(performance.now() - start) // the first one warms the machine up
  }
  return median(took)
}

function demo(): Shoot {
  const read = parseShootText(readFileSync(DEMO, 'utf8'))
  if (!read.ok) throw new Error(`${DEMO} does not read: ${read.problems[0]?.sentence}`)
  return read.value
}

/** The demo's cook with a roast that ends after so many hours, so that the length of the run is known. */
function fixedHours(shoot: Shoot, hours: number): CookPlan {
  const cook = shoot.cooks[0] as Cook
  const after = seconds(hours * 3600)
  const stages: Cook['stages'] = cook.stages
    .filter((stage) => stage.do === 'preheat' || stage.do === 'roast')
    .map((stage) => (stage.do === 'roast' ? { do: 'roast', at: stage.at, until: { after } } : stage))
  return toCookPlan(shoot, { ...cook, stages })
}

async function benchModel(shoot: Shoot): Promise<Figures> {
  const demoCook = toCookPlan(shoot, shoot.cooks[0] as Cook)
  return {
    ...benchKernels((hours) => fixedHours(shoot, hours), demoCook),
    reforecast_ms: reforecastMs(demoCook),
    run_3d_10mm_ms: await medianMs(3, () => run3d10mm(ROAST)),
  }
}

async function benchCard(shoot: Shoot): Promise<Figures> {
  const forecasts = new Map(shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed: 1 })]))
  const card = buildCard(shoot, forecasts)
  const forecast = forecasts.get(card.cook)
  if (!forecast) return {}
  const model = cardModel(card, checkCard(card, forecasts), {
    forecast,
    date: formatDate(shoot),
    sizes: sizeTable(shoot, (plan) => forecastCook(plan, { seed: 1 })),
    published: { at: 'https://example.com/leg-of-lamb' },
  })
  return { card_pdf_ms: await medianMs(3, () => printCard(model, 'A4')) }
}

const rounded = (figures: Figures): Figures =>
  Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, Number(value.toPrecision(4))]))

function print(figures: Figures) {
  if (process.argv.includes('--json')) return console.log(JSON.stringify(figures))
  const width = Math.max(...Object.keys(figures).map((name) => name.length))
  for (const [name, value] of Object.entries(figures)) console.log(`${name.padEnd(width)}  ${value}`)
  for (const line of dayTable()) console.log(line)
}

const shoot = demo()
const overlay = { overlay_x: await overlayTimesRealTime() }
const figures = { ...(await benchModel(shoot)), ...(await benchCard(shoot)), ...overlay, ...benchLayout() }
print(rounded({ ...figures, ...(existsSync('.next/emberslate') ? await benchApp() : {}) }))
