/** What every command reads and prints alike. */

/** Limits that keep a command within the memory of a small computer, and within the seeds of a shoot file. */
const MOST_MEMBERS = 20_000
const MOST_SEED = 0xffffffff

type Whole = number | undefined | string
/** The whole number that was asked for, undefined where none was; else a sentence that says what it must be. */
export function whole(name: string, written: string | undefined, least: number, most: number): Whole {
  if (written === undefined) return undefined
  const n = /^\d{1,10}$/.test(written) ? Number(written) : Number.NaN
  return n >= least && n <= most ? n : `--${name} is a whole number from ${least} to ${most}.`
}

export interface Ensemble {
  readonly seed: number | undefined
  readonly members: number | undefined
}
/** Seed and members as asked for, or a sentence that says what is wrong with one of them. */
export function ensembleOf(values: { readonly seed?: string; readonly members?: string }): Ensemble | string {
  const seed = whole('seed', values.seed, 0, MOST_SEED)
  const members = whole('members', values.members, 1, MOST_MEMBERS)
  if (typeof seed === 'string') return seed
  return typeof members === 'string' ? members : { seed, members }
}

/** One JSON document on standard output. A reader that has seen enough and hangs up is no fault. */
export function printJson(document: unknown): void {
  process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
    if (fault.code !== 'EPIPE') throw fault
  })
  process.stdout.write(`${JSON.stringify(document, null, 2)}\n`)
}
