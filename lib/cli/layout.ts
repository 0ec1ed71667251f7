import { parseArgs } from 'node:util'
import { layOutWithLids } from '../day/lay-out-with-lids'
import { problemsForLayout } from '../plan/parse'
import type { Shoot } from '../plan/shoot'
import { asCommand } from './as-command'
import { forecastWith } from './forecast-with-lids'
import { ensembleOf, printJson } from './options'
import { readShootFile, tell, tellProblems } from './problems'

const USAGE = 'Write: npm run -s layout -- FILE [--seed N].'

/** Prints the laid-out day as one JSON document. */
export function layoutCommand(args: string[]): void {
  const asked = readOptions(args)
  if (typeof asked === 'string') tell(asked)
  else answer(asked)
}

function answer(asked: Options): void {
  const shoot = readShootFile(asked.file)
  const problems = shoot ? problemsForLayout(shoot) : []
  if (problems.length > 0) tellProblems(problems)
  else if (shoot) printLayout(shoot, asked.seed ?? shoot.seed ?? 1)
}

function printLayout(shoot: Shoot, seed: number): void {
  printJson(layOutWithLids(shoot, forecastWith({ seed }), { seed }).layout)
}

type Options = Exclude<ReturnType<typeof readOptions>, string>
function readOptions(args: string[]) {
  try {
    const { values, positionals } = parseArgs({ args, allowPositionals: true, options: { seed: { type: 'string' } } })
    if (positionals.length > 1) return USAGE
    const ensemble = ensembleOf(values)
    return typeof ensemble === 'string' ? ensemble : { file: positionals[0], seed: ensemble.seed }
  } catch {
    return USAGE
  }
}

await asCommand(import.meta.url, layoutCommand)
