import { readFileSync } from 'node:fs'
import { captureOf } from '../../lib/day/capture'
import { layOutDay } from '../../lib/day/lay-out'
import { forecastCook } from '../../lib/model/forecast-cook'
import { toCookPlan } from '../../lib/plan/cook-plan'
import { parseShootText } from '../../lib/plan/parse'
import type { Shoot } from '../../lib/plan/shoot'

const SHOOTS = {
  'leg-of-lamb': 'prisma/demo/leg-of-lamb.json',
  'pork-loin': 'tests/fixtures/shoots/pork-loin.json',
}
const EACH = 0.95
const JOINT = 0.9
const FRESH = 2000
const SEEDS = 5

/**
 * Lays out each shoot from five seeds, then counts what its calls catch in 2,000 members that layout has never seen.
 * The figures are the least of the five.
 */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const least: Record<string, number> = {}
  for (const [name, path] of Object.entries(SHOOTS))
    for (let s = seed; s < seed + SEEDS; s++)
      for (const [moment, share] of Object.entries(caught(readShoot(path), s))) {
        const key = `${name} ${moment}`
        least[key] = Math.min(least[key] ?? 1, share)
      }
  const floor = (key: string) => (key.endsWith(' joint') ? JOINT : EACH)
  const short = Object.entries(least).filter(([key, share]) => share < floor(key))
  if (short.length > 0) throw new Error(`Too seldom: ${short.map(([key, share]) => `${key} ${share}`).join(', ')}`)
  return { ...least, members: FRESH, seeds: SEEDS }
}

function caught(shoot: Shoot, seed: number): Record<string, number> {
  const ensemble = (ofSeed: number, members?: number) =>
    new Map(
      shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed: ofSeed, members })] as const),
    )
  const layout = layOutDay(shoot, ensemble(seed), { seed })
  const { each, joint } = captureOf(shoot, layout, ensemble(seed + 1000, FRESH))
  return { ...each, joint }
}

function readShoot(path: string): Shoot {
  const read = parseShootText(readFileSync(path, 'utf8'))
  if (!read.ok) throw new Error(`${path} does not read.`)
  return read.value
}
