import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { buildCard, checkCard } from '../card/card'
import type { CheckedClaim } from '../card/claim'
import { cardModel } from '../export/card'
import { forecastCook } from '../model/forecast-cook'
import { formatDate } from '../plan/clock'
import { toCookPlan } from '../plan/cook-plan'
import type { Shoot } from '../plan/shoot'
import { printCard } from '../print/render'
import type { Paper } from '../print/sheet'
import { readShootFile, tell } from './problems'

const USAGE = 'Write: npm run -s card -- FILE [--pdf OUT] [--paper A4|Letter] [--seed N] [--members N].'

interface Options {
  readonly file: string | undefined
  readonly pdf: string | undefined
  readonly paper: Paper
  readonly seed: number | undefined
  readonly members: number | undefined
  readonly log: string | undefined
}

function readOptions(): Options | null {
  const text = { type: 'string' } as const
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { pdf: text, paper: text, seed: text, members: text, log: text },
    })
    const whole = (given: string | undefined) =>
      given === undefined ? undefined : /^\d+$/.test(given) ? Number(given) : Number.NaN
    const [seed, members, paper] = [whole(values.seed), whole(values.members), values.paper ?? 'A4']
    if (positionals.length > 1 || Number.isNaN(seed ?? 0) || Number.isNaN(members ?? 1) || members === 0) return null
    if (paper !== 'A4' && paper !== 'Letter') return null
    return { file: positionals[0], pdf: values.pdf, log: values.log, paper, seed, members }
  } catch {
    return null
  }
}

const finite = (n: number) => (Number.isFinite(n) ? n : null)
/** JSON knows no infinity: a bound that is never reached is null. */
const printed = ({
  id,
  kind,
  sentence,
  finding,
  figure,
  unit,
  reason,
  source,
  trueSentence,
  words,
  found,
}: CheckedClaim) => ({
  id,
  kind,
  sentence,
  finding,
  figure: figure && { low: finite(figure.low), likely: finite(figure.likely), high: finite(figure.high) },
  unit,
  reason,
  source,
  words,
  found,
  trueSentence,
})

async function printFor(shoot: Shoot, options: Options): Promise<void> {
  const seed = options.seed ?? shoot.seed ?? 1
  const forecasts = new Map(
    shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed, members: options.members })]),
  )
  const card = buildCard(shoot, forecasts)
  const claims = checkCard(card, forecasts)
  const forecast = forecasts.get(card.cook)
  if (options.pdf !== undefined && forecast) {
    const model = cardModel(card, claims, { forecast, date: formatDate(shoot) })
    if (!write(options.pdf, await printCard(model, options.paper))) return
  }
  process.stdout.write(`${JSON.stringify({ claims: claims.map(printed), cautions: card.cautions }, null, 2)}\n`)
}

function write(path: string, bytes: Uint8Array): boolean {
  try {
    writeFileSync(path, bytes)
    return true
  } catch {
    tell(`${path} cannot be written. Name a file in a folder that exists.`)
    return false
  }
}

/** Prints the claims of a shoot's recipe card with their findings, and its cautions; --pdf writes the card. */
async function main(): Promise<void> {
  const options = readOptions()
  if (!options) return tell(USAGE)
  if (options.log !== undefined)
    return tell('The card cannot read a log yet. Leave --log out: it is checked against the forecast.')
  const shoot = readShootFile(options.file)
  if (shoot) await printFor(shoot, options)
}

await main()
