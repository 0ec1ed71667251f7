/** In a child process, because it opens the database: `SHOOTS READINGS`, so many shoots with so many readings each. */

import { readFileSync } from 'node:fs'
import { appendLog } from '../../lib/data/append-log'
import { database } from '../../lib/data/client'
import { createShoot } from '../../lib/data/create-shoot'
import { entryId } from '../../lib/log/entry-id'
import { whenText } from '../../lib/log/fields'
import { chanceOf } from '../../lib/model/random'
import { instant } from '../../lib/units'

const [shoots = 0, readings = 0] = process.argv.slice(2).map(Number)
const AT_ONCE = 4
const STEP_MS = 10_000
const document = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const chance = chanceOf(1, 0, 62)
const byte = () => Math.floor(chance.uniform() * 256)
const began = Date.now() - readings * STEP_MS

/** A probe and the cooker in turn, up to now. */
function reading(i: number) {
  const at = instant(began + i * STEP_MS)
  const [sensor, temp] = i % 2 === 0 ? ['core', 4 + (40 * i) / readings] : ['cooker', 150 + (i % 7)]
  return {
    id: entryId(at, Uint8Array.from({ length: 10 }, byte)),
    at: whenText(at),
    by: { device: 'logger-1' },
    kind: 'reading',
    cook: 'hero',
    sensor,
    temp: `${(temp as number).toFixed(1)} °C`,
  }
}

async function plant(n: number) {
  const dated = { ...document, title: `Shoot ${n}`, date: new Date().toISOString().slice(0, 10) }
  const made = await createShoot(dated, `many-${String(n).padStart(6, '0')}`)
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  const entries = Array.from({ length: readings }, (_, i) => reading(i))
  await appendLog(made.value.id, instant(Date.now()), entries)
  process.stdout.write(`${made.value.id}\n`)
}

await database()
let next = 0
const lane = async () => {
  while (next < shoots) await plant(next++)
}
await Promise.all(Array.from({ length: AT_ONCE }, lane))
process.exit(0)
