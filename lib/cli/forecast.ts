import { parseArgs } from 'node:util'
import { KERNELS, type KernelName } from '../model/kernels'
import { forecastDocument } from '../plan/forecast-document'
import { type Ensemble, ensembleOf, printJson } from './options'
import { readShootFile, tell } from './problems'

const USAGE = 'Write: npm run -s forecast -- FILE [--members 256] [--seed N] [--kernel plain|simd].'
const NO_READINGS = 'Forecasts from readings are not built yet: leave --readings, --log and --now out.'

/** Prints the forecast of every cook of a shoot as one JSON document. */
function main(): void {
  const asked = readOptions()
  if (typeof asked === 'string') tell(asked)
  else {
    const shoot = readShootFile(asked.file)
    if (shoot) printJson(forecastDocument(shoot, asked))
  }
}

type Asked = Ensemble & { readonly file: string | undefined; readonly kernel: KernelName }
const kernelOf = (name = 'plain') => KERNELS.find((kernel) => kernel === name)

/** The options, or a sentence that says what is wrong with them. */
function readOptions(): Asked | string {
  const text = { type: 'string' } as const
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { members: text, seed: text, kernel: text, readings: text, log: text, now: text },
    })
    if (values.readings !== undefined || values.log !== undefined || values.now !== undefined) return NO_READINGS
    const kernel = kernelOf(values.kernel)
    if (kernel === undefined) return `No kernel "${values.kernel}": there are ${KERNELS.join(' and ')}.`
    if (positionals.length > 1) return USAGE
    const ensemble = ensembleOf(values)
    return typeof ensemble === 'string' ? ensemble : { file: positionals[0], kernel, ...ensemble }
  } catch {
    return USAGE
  }
}

main()
