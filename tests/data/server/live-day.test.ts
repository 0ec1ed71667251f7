import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { LiveDay, type LiveEvent } from '../../../app/live/live-day'
import { appendLog } from '../../../lib/data/append-log'
import { database } from '../../../lib/data/client'
import { createShoot } from '../../../lib/data/create-shoot'
import { forecastsTold } from '../../../lib/data/forecast-journal'
import { type Bus, bus, ServerBus } from '../../../lib/data/server/bus'
import { whenText } from '../../../lib/log/fields'
import { instant } from '../../../lib/units'
import { mark } from '../../unit/log/lines'
import { closeAll, freshDatabase } from '../real-database'

const MINIMAL = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const DOCUMENT = { ...MINIMAL, date: new Date().toISOString().slice(0, 10) }
const shared = globalThis as { emberslateBus?: Bus }
let shoot: string
let other: Bus
beforeEach(async () => {
  const url = await freshDatabase()
  const made = await createShoot(DOCUMENT, 'write-000001')
  shoot = made.ok ? made.value.id : ''
  other = new ServerBus(url, async () => (await database()).prisma)
})
afterEach(async () => {
  await other.close()
  await closeAll()
})

/** Logged so many minutes ago. */
function log(ago: number, moment: string) {
  const now = Date.now()
  const { document } = mark(0, moment)
  return appendLog(shoot, instant(now), [{ ...document, at: whenText(instant(now - ago * 60_000)) }])
}
/** The day as a process with this connection has it, and what it tells its phones. */
async function dayOn(own: Bus) {
  shared.emberslateBus = own
  const told: Extract<LiveEvent, { forecast: object }>['forecast'][] = []
  const day = new LiveDay(shoot, () => {})
  day.hear((event) => 'forecast' in event && told.push(event.forecast))
  await day.latest()
  return { day, told }
}
const WITHIN = { timeout: 25_000, interval: 50 }

it('of two processes one forecasts a day, the other tells the same, and goes on when the first is gone', async () => {
  const here = bus()
  const first = await dayOn(here)
  await vi.waitFor(() => expect(first.told).toHaveLength(1), WITHIN)
  const second = await dayOn(other)
  expect(await second.day.latest()).toEqual(await first.day.latest())
  await log(40, 'meat-on')
  await vi.waitFor(() => expect(second.told.length).toBeGreaterThan(0), WITHIN)
  expect(second.told.at(-1)).toEqual(first.told.at(-1))
  expect(Object.keys(second.told.at(-1)?.forecast.lines ?? {})).toEqual(['hero'])
  const before = [first.told.length, second.told.length]
  await here.close()
  await log(0, 'pull')
  await vi.waitFor(() => expect(second.told.length).toBeGreaterThan(before[1] as number), WITHIN)
  expect(first.told).toHaveLength(before[0] as number)
  const kept = await forecastsTold(shoot)
  expect(kept.map(({ id }) => id)).toEqual([...first.told, ...second.told.slice(before[1])].map(({ id }) => id))
  expect(kept.slice(1).map(({ after }) => after)).toEqual(kept.slice(0, -1).map(({ id }) => id))
}, 90_000)
