import { readFileSync } from 'node:fs'
import { setAt } from '../../../lib/plan/edit'
import { parseShoot } from '../../../lib/plan/parse'
import type { Shoot, ShootDocument } from '../../../lib/plan/shoot'

export const FIXTURES = ['pork-loin', 'beef-rib', 'turkey-oven', 'minimal', 'full'] as const
const folder = new URL('../../fixtures/shoots/', import.meta.url)
export const fixtureText = (name: string) => readFileSync(new URL(`${name}.json`, folder), 'utf8')
export const demoText = () => readFileSync(new URL('../../../prisma/demo/leg-of-lamb.json', import.meta.url), 'utf8')

/** A complete shoot; tests state only the difference. */
export const lamb = (): ShootDocument => JSON.parse(demoText())
export const minimal = (): ShootDocument => JSON.parse(fixtureText('minimal'))

/** The lamb with other values at some pointers; undefined takes out. */
export const lambWith = (changes: Record<string, unknown>): ShootDocument =>
  JSON.parse(
    JSON.stringify(Object.entries(changes).reduce((document, [at, value]) => setAt(document, at, value), lamb())),
  )

export function read(document: unknown): Shoot {
  const result = parseShoot(document)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}
/** "pointer: sentence" of every fault. */
export function faults(document: unknown): string[] {
  const result = parseShoot(document)
  return result.ok ? [] : result.problems.map(({ pointer, sentence }) => `${pointer}: ${sentence}`)
}
