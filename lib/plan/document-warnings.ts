import type { Forecast } from '../model/forecast'
import type { Warning } from '../refusals'
import type { Shoot } from './shoot'
import { sideWarnings } from './side-warnings'
import { targetWarnings } from './target-warnings'

/** Where a forecast's warning stands in the document: a preheat that was filled in moved every stage on by one. */
function inDocument(path: string, cook: Shoot['cooks'][number], index: number): string {
  const filledIn = cook.stages.some((stage) => stage.do === 'preheat') ? 0 : 1
  const moved = path.replace(/^\/stages\/(\d+)/, (_, n: string) => `/stages/${Math.max(0, Number(n) - filledIn)}`)
  return `/cooks/${index}${moved}`
}

/** What a reader of the plan should know before they cook it, each at its place in the shoot file. */
export function documentWarnings(shoot: Shoot, forecasts: ReadonlyMap<string, Forecast>): Warning[] {
  const ofModel = shoot.cooks.flatMap((cook, i) =>
    (forecasts.get(cook.id)?.warnings ?? []).map((warning) => ({
      ...warning,
      path: inDocument(warning.path, cook, i),
    })),
  )
  return [...ofModel, ...targetWarnings(shoot, forecasts), ...sideWarnings(shoot, forecasts)]
}
