/**
 * A server's part in a child process that is killed: opens the data folder, says which lines it holds, then keeps
 * entries until its end. A line of output each: {"open": [ids]}, {"acknowledged": [ids]}.
 */

import { randomBytes } from 'node:crypto'
import { writeSync } from 'node:fs'
import { appendLog } from '../../lib/data/append-log'
import { database } from '../../lib/data/client'
import { createShoot } from '../../lib/data/create-shoot'
import { loadLog } from '../../lib/data/load-log'
import { entryId } from '../../lib/log/entry-id'
import { whenText } from '../../lib/log/fields'
import { type Instant, instant } from '../../lib/units'

const SHOOT = {
  emberslate: 1,
  title: 'Under writes',
  date: '2027-05-15',
  zone: 'Europe/Dublin',
  place: { lat: 53.35, lon: -6.26 },
  cooks: [
    {
      id: 'hero',
      roast: { cut: 'lamb-leg-bone-in', mass: '3.2 kg', start: '4 °C' },
      cooker: { kind: 'oven' },
      stages: [
        { do: 'preheat', at: '150 °C' },
        { do: 'roast', at: '150 °C', until: { core: '55 °C' } },
        { do: 'rest', until: { after: '15 min' } },
      ],
    },
  ],
}
const WRITERS = 5
const say = (what: object) => writeSync(1, `${JSON.stringify(what)}\n`)
const now = () => instant(Date.now())
const id = (at: Instant) => entryId(at, randomBytes(10))

/** Each sends what it has not heard of once more, as a phone's outbox does. */
async function write(shootId: string, device: string): Promise<never> {
  let unheard: { id: string }[] = []
  for (;;) {
    const at = now()
    const made = Array.from({ length: 1 + ((randomBytes(1)[0] as number) % 4) }, () => ({
      id: id(at),
      at: whenText(at),
      by: { device },
      kind: 'reading',
      cook: 'hero',
      sensor: 'core',
      temp: `${(randomBytes(1)[0] as number) / 4} °C`,
    }))
    const { entries } = await appendLog(shootId, at, [...unheard, ...made])
    if (entries.some(({ became }) => became === 'refused')) throw new Error(JSON.stringify(entries))
    say({ acknowledged: made.map((one) => one.id) })
    unheard = made.slice(0, 1)
  }
}

const { notes } = await database()
const made = await createShoot(SHOOT, 'kill-test-shoot')
if (!made.ok) throw new Error(JSON.stringify(made.problems))
const lines = await loadLog(made.value.id, 0)
say({ open: lines.map(({ document }) => document.id), positions: lines.map(({ position }) => position), notes })
if (process.argv[2] === 'look') process.exit(0)
await Promise.all(Array.from({ length: WRITERS }, (_, i) => write(made.value.id, `phone-${i}`)))
