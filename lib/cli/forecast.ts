import { parseArgs } from 'node:util'
import { DEFAULT_MEMBERS } from '../model/forecast-cook'
import { forecastDocument } from '../plan/forecast-document'
import { readShootFile, tell } from './problems'

const USAGE = 'Write: npm run -s forecast -- FILE [--members 256] [--seed N] [--kernel plain].'
const MOST_MEMBERS = 20_000
const NOT_YET: Readonly<Record<string, string>> = {
  kernel: 'The SIMD kernel is not built yet: leave --kernel out, or write --kernel plain.',
  readings: 'Forecasts from readings are not built yet: leave --readings, --log and --now out.',
}

/** Prints the forecast of every cook of a shoot as one JSON document. */
function main(): void {
  const asked = readOptions()
  if (typeof asked === 'string') tell(asked)
  else {
    const shoot = readShootFile(asked.file)
    if (shoot) process.stdout.write(`${JSON.stringify(forecastDocument(shoot, asked), null, 2)}\n`)
  }
}

type Options = { readonly file: string | undefined; readonly seed: number | undefined; readonly members: number }
/** The options, or a sentence that says what is wrong with them. */
function readOptions(): Options | string {
  const text = { type: 'string' } as const
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { members: text, seed: text, kernel: text, readings: text, log: text, now: text },
    })
    if (values.readings !== undefined || values.log !== undefined || values.now !== undefined)
      return NOT_YET.readings as string
    if (values.kernel === 'simd') return NOT_YET.kernel as string
    if (values.kernel !== undefined && values.kernel !== 'plain') return `No kernel "${values.kernel}": there is plain.`
    const members = whole(values.members ?? String(DEFAULT_MEMBERS), 1, MOST_MEMBERS)
    if (members === null) return `--members is a whole number from 1 to ${MOST_MEMBERS}.`
    const seed = whole(values.seed ?? '0', 0, 0xffffffff)
    if (seed === null) return '--seed is a whole number from 0 to 4294967295.'
    if (positionals.length > 1) return USAGE
    return { file: positionals[0], seed: values.seed === undefined ? undefined : seed, members }
  } catch {
    return USAGE
  }
}

function whole(text: string, least: number, most: number): number | null {
  const n = /^\d{1,10}$/.test(text) ? Number(text) : Number.NaN
  return n >= least && n <= most ? n : null
}

main()
