import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { layOutWithLids } from '../day/lay-out-with-lids'
import type { LidOpenings } from '../day/lid-openings'
import { asServed } from '../day/slice-wait'
import { forecastCook } from '../model/forecast-cook'
import { fastestKernel } from '../model/kernels'
import { MODEL_VERSION } from '../model/version'
import { toCookPlan } from '../plan/cook-plan'
import { parseShootText } from '../plan/parse'
import type { Shoot } from '../plan/shoot'
import { type LiveKept, liveForecast } from '../session/live-forecast'
import { forecastTimes, lineOf, playedOut } from '../session/played-out'
import { playedPicture } from '../session/played-picture'
import { madeUpDay } from '../session/rehearsal'
import { sessionDay } from '../session/session-day'

/** What the start page plays: the demo's rehearsal, played out beforehand so that nobody waits for it. */
export const DEMO_FILE = 'prisma/demo/leg-of-lamb.json'
export const PLAYED_FILE = 'app/start/generated/played-day.json'

/** By what a played day is of this demo and this model. */
export const playedKey = (demo: string): string =>
  createHash('sha256').update(`${MODEL_VERSION}\n${demo}`).digest('hex').slice(0, 16)

/** Sparse enough to stay small; each mark has its own forecast too. */
const EACH_MIN = 20
/** A label of the wide picture takes about so much of the day. */
const LABEL_MIN = 54

export function playDemo(demo: string) {
  const read = parseShootText(demo)
  if (!read.ok) throw new Error(`The demo does not read: ${read.problems[0]?.sentence}`)
  const shoot = read.value
  const seed = shoot.seed ?? 1
  const kernel = fastestKernel()
  const forecast = (of: Shoot, lids: LidOpenings) =>
    new Map(of.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(of, cook, lids[cook.id]), { seed, kernel })]))
  const { layout } = layOutWithLids(shoot, forecast, { seed })
  const forecasts = new Map(
    [...forecast(shoot, layout.lidOpenings ?? {})].map(([id, one]) => [
      id,
      asServed(shoot, id, one, layout.meatOn[id] ?? layout.start),
    ]),
  )
  const lines = madeUpDay({ shoot, layout, forecasts, seed, kernel }).map(lineOf)
  const day = sessionDay(shoot, layout)
  let kept: LiveKept = {}
  const { session, ...played } = playedOut({
    day,
    lines,
    forecasts: {
      at: forecastTimes(lines, EACH_MIN),
      make(told, now, before) {
        const made = liveForecast({ shoot, layout, told, now, before, kernel }, kept)
        kept = made.kept
        return made.forecast
      },
    },
    crewSeed: seed,
  })
  const morning = forecasts.get(shoot.cooks[0]?.id ?? '')
  if (!morning) throw new Error('The demo has no cook.')
  const { calls } = session
  return playedPicture({
    shoot,
    layout,
    day,
    morning,
    lines: played.lines,
    forecasts: played.forecasts,
    calls,
    labelMin: LABEL_MIN,
  })
}

if (process.argv[1]?.endsWith('played-day.ts')) {
  const demo = readFileSync(DEMO_FILE, 'utf8')
  writeFileSync(PLAYED_FILE, `${JSON.stringify({ key: playedKey(demo), ...playDemo(demo) })}\n`)
}
