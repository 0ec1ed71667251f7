import { parseArgs } from 'node:util'
import { checkLayout } from '../day/check'
import { readLayout } from '../day/check/read-layout'
import { layOutDay } from '../day/lay-out'
import type { Layout } from '../day/layout'
import type { Forecast } from '../model/forecast'
import { forecastCook } from '../model/forecast-cook'
import { toCookPlan } from '../plan/cook-plan'
import { problemsForLayout } from '../plan/parse'
import type { Shoot } from '../plan/shoot'
import { ensembleOf, printJson } from './options'
import { readShootFile, readText, tell, tellProblems } from './problems'

const USAGE = 'Write: npm run -s check -- FILE [--layout LAYOUT] [--seed N] [--members N].'

/** Prints the rules that a layout breaks, `[]` when none; without --layout the day is laid out first. */
function main(): void {
  const asked = readOptions()
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
  const forecasts = forecastsOf(shoot, seed, asked.members)
  const layout = given ?? layOutDay(shoot, forecasts, { seed })
  printJson(checkLayout(shoot, layout, forecasts))
}

type Options = Exclude<ReturnType<typeof readOptions>, string>
function readOptions() {
  try {
    const { values, positionals } = parseArgs({
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

function forecastsOf(shoot: Shoot, seed: number, members: number | undefined): ReadonlyMap<string, Forecast> {
  return new Map(shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed, members })]))
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

main()
