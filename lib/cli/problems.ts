import { readFileSync, statSync } from 'node:fs'
import { LARGEST_BYTES, parseShootText, tooLarge } from '../plan/parse'
import type { Shoot } from '../plan/shoot'
import type { Problem } from '../refusals'

const MOST_LINES = 4

/** At most four lines "POINTER: sentence" on standard error, and exit code 2. */
export function tellProblems(problems: readonly Problem[]): void {
  const told = problems.length > MOST_LINES ? problems.slice(0, MOST_LINES - 1) : problems
  const lines = told.map(({ pointer, sentence }) => `${pointer}: ${sentence.replaceAll('\n', ' ')}`)
  if (told.length < problems.length) lines.push(`: and ${problems.length - told.length} more`)
  process.stderr.write(`${lines.join('\n')}\n`)
  process.exitCode = 2
}
export const tell = (sentence: string) => tellProblems([{ pointer: '', sentence }])

interface Limit {
  readonly mostBytes: number
  readonly refuse: (bytes: number) => string
}
/** The text of a file, or of standard input for "-"; null with the problem told. */
export function readText(
  path: string | undefined,
  what = 'a shoot file',
  { mostBytes, refuse }: Limit = { mostBytes: LARGEST_BYTES, refuse: tooLarge },
): string | null {
  if (path === undefined) {
    tell(`Name ${what}, or "-" for standard input.`)
    return null
  }
  try {
    const size = path === '-' ? 0 : statSync(path).size
    if (size <= mostBytes) return readFileSync(path === '-' ? 0 : path, 'utf8')
    tell(refuse(size))
  } catch {
    tell(`${path} cannot be read. Name ${what} that exists, or "-" for standard input.`)
  }
  return null
}

/** The shoot in a file; null with its problems told. */
export function readShootFile(path: string | undefined): Shoot | null {
  const text = readText(path)
  if (text === null) return null
  const parsed = parseShootText(text)
  if (parsed.ok) return parsed.value
  tellProblems(parsed.problems)
  return null
}
