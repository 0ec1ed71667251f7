import { parseArgs } from 'node:util'
import { KERNELS, type KernelName } from '../model/kernels'
import { forecastDocument, type Read } from '../plan/forecast-document'
import { LARGEST_READINGS_BYTES, readReadings } from '../plan/read-readings'
import type { Shoot } from '../plan/shoot'
import { asCommand } from './as-command'
import { type Ensemble, ensembleOf, printJson, whole } from './options'
import { readShootFile, readText, tell, tellProblems } from './problems'
import { readOfLog } from './read-log'

const USAGE =
  'Write: npm run -s forecast -- FILE [--members 256] [--seed N] [--kernel plain|simd] [--readings CSV | --log NDJSON] [--now S].'
const NOT_BOTH = 'A slate log holds the readings: give --readings or --log, not both.'
const NOW_ALONE = '--now says how late it is since the last reading: give it with --readings or --log.'
const readingsTooLarge = (bytes: number) =>
  `The file of readings holds ${(bytes / 1e6).toFixed(1)} MB; ${LARGEST_READINGS_BYTES / 1e6} MB at most. Thin it to a reading every few seconds.`

/** Prints the forecast of every cook of a shoot as one JSON document. */
export function forecastCommand(args: string[]): void {
  const asked = readOptions(args)
  if (typeof asked === 'string') tell(asked)
  else {
    const shoot = readShootFile(asked.file)
    const read = shoot && readOf(shoot, asked)
    if (shoot && read !== null) printJson(forecastDocument(shoot, { ...asked, read }))
  }
}

/** The readings asked for, undefined where none are; null with their problems told. */
function readOf(shoot: Shoot, { readings: path, log, nowS }: Asked): Read | undefined | null {
  if (log !== undefined) return upTo(readOfLog(shoot, log), nowS)
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
  return upTo({ readings: parsed.value }, nowS)
}

/** The same with the time it is now, which is none before the last reading or mark. */
function upTo(read: Read | null, nowS: number | undefined): Read | null {
  if (read === null || nowS === undefined) return read
  const all = [...read.readings.values(), ...(read.marks?.values() ?? [])].flat()
  const lastS = all.reduce((last, { t }) => Math.max(last, t), -Infinity)
  if (nowS >= lastS) return { ...read, nowS }
  const what = read.marks ? 'reading or mark' : 'reading'
  tell(`--now is ${nowS}, before the last ${what} at ${lastS} s; it is that time or later, or left out.`)
  return null
}

type Asked = Ensemble & {
  readonly file: string | undefined
  readonly kernel: KernelName
  readonly readings: string | undefined
  readonly log: string | undefined
  readonly nowS: number | undefined
}
/** A cook not done in 36 h never is. */
const LATEST_NOW_S = 129_600
const kernelOf = (name = 'plain') => KERNELS.find((kernel) => kernel === name)

/** The options, or a sentence that says what is wrong with them. */
function readOptions(args: string[]): Asked | string {
  const text = { type: 'string' } as const
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: { members: text, seed: text, kernel: text, readings: text, log: text, now: text },
    })
    if (values.log !== undefined && values.readings !== undefined) return NOT_BOTH
    if (values.now !== undefined && values.readings === undefined && values.log === undefined) return NOW_ALONE
    const nowS = whole('now', values.now, 0, LATEST_NOW_S)
    if (typeof nowS === 'string') return nowS
    const kernel = kernelOf(values.kernel)
    if (kernel === undefined) return `No kernel "${values.kernel}": there are ${KERNELS.join(' and ')}.`
    if (positionals.length > 1) return USAGE
    const ensemble = ensembleOf(values)
    return typeof ensemble === 'string'
      ? ensemble
      : { file: positionals[0], kernel, readings: values.readings, log: values.log, nowS, ...ensemble }
  } catch {
    return USAGE
  }
}

await asCommand(import.meta.url, forecastCommand)
