import { parseArgs } from 'node:util'
import { KERNELS, type KernelName } from '../model/kernels'
import { forecastDocument, type Read } from '../plan/forecast-document'
import { LARGEST_READINGS_BYTES, readReadings } from '../plan/read-readings'
import type { Shoot } from '../plan/shoot'
import { type Ensemble, ensembleOf, printJson, whole } from './options'
import { readShootFile, readText, tell, tellProblems } from './problems'

const USAGE =
  'Write: npm run -s forecast -- FILE [--members 256] [--seed N] [--kernel plain|simd] [--readings CSV [--now S]].'
const NO_LOG = 'Forecasts from a slate log are not built yet: leave --log out.'
const NOW_ALONE = '--now says how late it is since the last reading: give it with --readings.'
const readingsTooLarge = (bytes: number) =>
  `The file of readings holds ${(bytes / 1e6).toFixed(1)} MB; ${LARGEST_READINGS_BYTES / 1e6} MB at most. Thin it to a reading every few seconds.`

/** Prints the forecast of every cook of a shoot as one JSON document. */
function main(): void {
  const asked = readOptions()
  if (typeof asked === 'string') tell(asked)
  else {
    const shoot = readShootFile(asked.file)
    const read = shoot && readOf(shoot, asked)
    if (shoot && read !== null) printJson(forecastDocument(shoot, { ...asked, read }))
  }
}

/** The readings asked for, undefined where none are; null with their problems told. */
function readOf(shoot: Shoot, { readings: path, nowS }: Asked): Read | undefined | null {
  if (path === undefined) return undefined
  const limit = { mostBytes: LARGEST_READINGS_BYTES, refuse: readingsTooLarge }
  const text = readText(path, 'a file of readings', limit)
  if (text === null) return null
  const ids = shoot.cooks.map(({ id }) => id)
  const parsed = readReadings(text, ids)
  if (!parsed.ok) {
    tellProblems(parsed.problems)
    return null
  }
  const lastS = [...parsed.value.values()].flat().reduce((last, { t }) => Math.max(last, t), -Infinity)
  if (nowS === undefined || nowS >= lastS) return { readings: parsed.value, nowS }
  tell(`--now is ${nowS}, before the last reading at ${lastS} s; it is that time or later, or left out.`)
  return null
}

type Asked = Ensemble & {
  readonly file: string | undefined
  readonly kernel: KernelName
  readonly readings: string | undefined
  readonly nowS: number | undefined
}
/** A cook not done in 36 h never is. */
const LATEST_NOW_S = 129_600
const kernelOf = (name = 'plain') => KERNELS.find((kernel) => kernel === name)

/** The options, or a sentence that says what is wrong with them. */
function readOptions(): Asked | string {
  const text = { type: 'string' } as const
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { members: text, seed: text, kernel: text, readings: text, log: text, now: text },
    })
    if (values.log !== undefined) return NO_LOG
    if (values.now !== undefined && values.readings === undefined) return NOW_ALONE
    const nowS = whole('now', values.now, 0, LATEST_NOW_S)
    if (typeof nowS === 'string') return nowS
    const kernel = kernelOf(values.kernel)
    if (kernel === undefined) return `No kernel "${values.kernel}": there are ${KERNELS.join(' and ')}.`
    if (positionals.length > 1) return USAGE
    const ensemble = ensembleOf(values)
    return typeof ensemble === 'string'
      ? ensemble
      : { file: positionals[0], kernel, readings: values.readings, nowS, ...ensemble }
  } catch {
    return USAGE
  }
}

main()
