import { parseArgs } from 'node:util'
import { layOutDay } from '../day/lay-out'
import { forecastCook } from '../model/forecast-cook'
import { toCookPlan } from '../plan/cook-plan'
import { problemsForLayout } from '../plan/parse'
import type { Shoot } from '../plan/shoot'
import { readShootFile, tell, tellProblems } from './problems'

const USAGE = 'Write: npm run -s layout -- FILE [--seed N].'

/** Prints the laid-out day as one JSON document. */
function main(): void {
  const asked = readOptions()
  const shoot = asked ? readShootFile(asked.file) : null
  if (!asked) tell(USAGE)
  if (!asked || !shoot) return
  const problems = problemsForLayout(shoot)
  if (problems.length > 0) tellProblems(problems)
  else printLayout(shoot, asked.seed ?? shoot.seed ?? 1)
}

function printLayout(shoot: Shoot, seed: number): void {
  const forecasts = new Map(shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed })]))
  process.stdout.write(`${JSON.stringify(layOutDay(shoot, forecasts, { seed }), null, 2)}\n`)
}

function readOptions(): { file: string | undefined; seed: number | undefined } | null {
  try {
    const { values, positionals } = parseArgs({ allowPositionals: true, options: { seed: { type: 'string' } } })
    if (positionals.length > 1 || (values.seed !== undefined && !/^\d{1,9}$/.test(values.seed))) return null
    return { file: positionals[0], seed: values.seed === undefined ? undefined : Number(values.seed) }
  } catch {
    return null
  }
}

main()
