import { parseArgs } from 'node:util'
import { forecastDocument } from '../plan/forecast-document'
import { type Ensemble, ensembleOf, printJson } from './options'
import { readShootFile, tell } from './problems'

const USAGE = 'Write: npm run -s forecast -- FILE [--members 256] [--seed N] [--kernel plain].'
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
    if (shoot) printJson(forecastDocument(shoot, asked))
  }
}

/** The options, or a sentence that says what is wrong with them. */
function readOptions(): (Ensemble & { readonly file: string | undefined }) | string {
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
    if (positionals.length > 1) return USAGE
    const ensemble = ensembleOf(values)
    return typeof ensemble === 'string' ? ensemble : { file: positionals[0], ...ensemble }
  } catch {
    return USAGE
  }
}

main()
