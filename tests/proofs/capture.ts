import { readFileSync } from 'node:fs'
import { captureOf } from '../../lib/day/capture'
import { layOutDay } from '../../lib/day/lay-out'
import { forecastCook } from '../../lib/model/forecast-cook'
import { toCookPlan } from '../../lib/plan/cook-plan'
import { parseShootText } from '../../lib/plan/parse'

const EACH = 0.95
const JOINT = 0.9
const FRESH = 2000

/** Lays out the demo, then counts what its calls catch in 2,000 members that the layout has never seen. */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const read = parseShootText(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8'))
  if (!read.ok) throw new Error('The demo does not read.')
  const shoot = read.value
  const ensemble = (ofSeed: number, members?: number) =>
    new Map(
      shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed: ofSeed, members })] as const),
    )
  const layout = layOutDay(shoot, ensemble(seed), { seed })
  const { each, joint } = captureOf(shoot, layout, ensemble(seed + 1000, FRESH))
  const short = Object.entries(each).filter(([, share]) => share < EACH)
  if (short.length > 0) throw new Error(`Below ${EACH}: ${short.map(([moment, share]) => `${moment} ${share}`).join(', ')}`)
  if (joint < JOINT) throw new Error(`All together in ${joint}, below ${JOINT}.`)
  return { ...each, joint, members: FRESH }
}
