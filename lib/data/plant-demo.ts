import 'server-only'
import { readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import { parseShootText } from '../plan/parse'
import { database } from './client'
import { createShoot, shootIdFrom } from './create-shoot'

const writeIdOf = (name: string) => `demo-${name}`
/** The shoot whose day is shown to who comes new. */
export const DEMO_ID = shootIdFrom(writeIdOf('leg-of-lamb'))

const DEMOS = path.join(/* turbopackIgnore: true */ process.cwd(), 'prisma', 'demo')
async function demosIn(folder: string): Promise<readonly string[]> {
  const names = await readdir(/* turbopackIgnore: true */ folder).catch(() => [] as string[])
  return names.filter((one) => one.endsWith('.json')).sort()
}
const writeIdOfFile = (name: string) => writeIdOf(path.basename(name, '.json'))
export const demoIds = async (): Promise<readonly string[]> =>
  (await demosIn(DEMOS)).map((name) => shootIdFrom(writeIdOfFile(name)))

/** Puts the demo shoots of `folder` in the database if it holds no shoot at all. */
export async function plantDemo(folder = DEMOS): Promise<void> {
  const { prisma } = await database()
  if ((await prisma.shoot.count()) > 0) return
  for (const name of await demosIn(folder)) {
    const text = await readFile(/* turbopackIgnore: true */ path.join(folder, name), 'utf8')
    const read = parseShootText(text)
    if (!read.ok)
      throw new Error(`The demo ${name} does not read: ${read.problems[0]?.pointer}: ${read.problems[0]?.sentence}`)
    await createShoot(JSON.parse(text), writeIdOfFile(name))
  }
}
