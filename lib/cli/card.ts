import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { buildCard, checkCard } from '../card/card'
import type { CheckedClaim } from '../card/claim'
import { cardModel } from '../export/card'
import { cookFacts } from '../log/cook-facts'
import type { DayState } from '../log/day-state'
import { forecastCook } from '../model/forecast-cook'
import { formatDate } from '../plan/clock'
import { toCookPlan } from '../plan/cook-plan'
import type { Shoot } from '../plan/shoot'
import { printCard } from '../print/render'
import type { CardPaper } from '../print/sheet'
import { asCommand } from './as-command'
import { type Ensemble, ensembleOf, printJson } from './options'
import { readShootFile, tell } from './problems'
import { dayOfLog } from './read-log'

const USAGE =
  'Write: npm run -s card -- FILE [--log NDJSON] [--pdf OUT] [--paper A4|Letter|small] [--seed N] [--members N].'

interface Options extends Ensemble {
  readonly file: string | undefined
  readonly pdf: string | undefined
  readonly paper: CardPaper
  readonly log: string | undefined
}

function readOptions(args: string[]): Options | string {
  const text = { type: 'string' } as const
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: { pdf: text, paper: text, seed: text, members: text, log: text },
    })
    const paper = values.paper ?? 'A4'
    if (positionals.length > 1 || (paper !== 'A4' && paper !== 'Letter' && paper !== 'small')) return USAGE
    const ensemble = ensembleOf(values)
    if (typeof ensemble === 'string') return ensemble
    return { file: positionals[0], pdf: values.pdf, log: values.log, paper, ...ensemble }
  } catch {
    return USAGE
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

async function printFor(shoot: Shoot, day: DayState | null, options: Options): Promise<void> {
  const seed = options.seed ?? shoot.seed ?? 1
  const forecasts = new Map(
    shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed, members: options.members })]),
  )
  const card = buildCard(shoot, forecasts)
  const claims = checkCard(card, forecasts, day && cookFacts(day, card.cook))
  const forecast = forecasts.get(card.cook)
  if (options.pdf !== undefined && forecast) {
    const published = { ...shoot.publish, at: shoot.publish?.page ?? null }
    const model = cardModel(card, claims, { forecast, date: formatDate(shoot), published })
    if (!write(options.pdf, await printCard(model, options.paper))) return
  }
  printJson({ claims: claims.map(printed), cautions: card.cautions })
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

/** Prints the claims of a shoot's recipe card with their findings, by the day's log too where there is one, and its cautions; --pdf writes the card. */
export async function cardCommand(args: string[]): Promise<void> {
  const options = readOptions(args)
  if (typeof options === 'string') return tell(options)
  const shoot = readShootFile(options.file)
  if (!shoot) return
  const day = options.log === undefined ? null : dayOfLog(shoot, options.log)
  if (day || options.log === undefined) await printFor(shoot, day, options)
}

await asCommand(import.meta.url, cardCommand)
