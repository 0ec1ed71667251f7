import { parseArgs } from 'node:util'
import { checkLayout } from '../day/check'
import { readLayout } from '../day/check/read-layout'
import { layOutWithLids } from '../day/lay-out-with-lids'
import type { Layout } from '../day/layout'
import { problemsForLayout } from '../plan/parse'
import type { Shoot } from '../plan/shoot'
import { asCommand } from './as-command'
import { forecastWith } from './forecast-with-lids'
import { ensembleOf, printJson } from './options'
import { readShootFile, readText, tell, tellProblems } from './problems'

const USAGE = 'Write: npm run -s check -- FILE [--layout LAYOUT] [--seed N] [--members N].'

/** Prints the rules that a layout breaks, `[]` when none; without --layout the day is laid out first. */
export function checkCommand(args: string[]): void {
  const asked = readOptions(args)
  if (typeof asked === 'string') tell(asked)
  else answer(asked)
}

function answer(asked: Options): void {
  const shoot = readShootFile(asked.file)
  const problems = shoot ? problemsForLayout(shoot) : []
  if (problems.length > 0) tellProblems(problems)
  else if (shoot) printViolations(shoot, asked)
}

function printViolations(shoot: Shoot, asked: Options): void {
  const seed = asked.seed ?? shoot.seed ?? 1
  const given = asked.layout === undefined ? undefined : layoutFrom(asked.layout, shoot)
  if (given === null) return
  const forecast = forecastWith({ seed, members: asked.members })
  const { layout, forecasts } = given
    ? { layout: given, forecasts: forecast(shoot, given.lidOpenings ?? {}) }
    : layOutWithLids(shoot, forecast, { seed })
  printJson(checkLayout(shoot, layout, forecasts))
}

type Options = Exclude<ReturnType<typeof readOptions>, string>
function readOptions(args: string[]) {
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: { layout: { type: 'string' }, seed: { type: 'string' }, members: { type: 'string' } },
    })
    if (positionals.length > 1) return USAGE
    const ensemble = ensembleOf(values)
    return typeof ensemble === 'string' ? ensemble : { file: positionals[0], layout: values.layout, ...ensemble }
  } catch {
    return USAGE
  }
}

function layoutFrom(path: string, shoot: Shoot): Layout | null {
  const text = readText(path, 'a layout')
  if (text === null) return null
  try {
    const read = readLayout(JSON.parse(text), shoot)
    if (read.ok) return read.value
    tellProblems(read.problems)
  } catch {
    tell(`${path} is not JSON. Give what "npm run -s layout" printed.`)
  }
  return null
}

await asCommand(import.meta.url, checkCommand)
