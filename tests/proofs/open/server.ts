import { execFile } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { promisify } from 'node:util'
import { entryId } from '../../../lib/log/entry-id'
import { whenText } from '../../../lib/log/fields'
import { chanceOf } from '../../../lib/model/random'
import { instant } from '../../../lib/units'
import { Listener } from '../../data/under-restarts'
import { startPostgres } from '../../postgres'
import { type RunningApp, startApp } from '../../web/server'

const SHOOTS = 1000
const READINGS_EACH = 1000
const SAMPLES = 60
const LIVE_SHOOTS = 12
const WITHIN_MS = 300
/** A logger with five probes reads them four times a second and sends once; each shoot under way has two loggers. */
const LOGGERS = 50
const LIVE_AT_ONCE = 25
const ROUNDS = 4
const PROBES = ['core', 'core-2', 'core-3', 'core-4', 'cooker']
const LOAD_S = 60
const SHARE_ANSWERED = 0.99

const at = (values: readonly number[], share: number) =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ?? Number.NaN

/** So many shoots in a place, by a process of their own; their ids, and how long it took. */
async function plant(env: Record<string, string>) {
  const since = performance.now()
  const args = ['--conditions=react-server', '--import=tsx', 'tests/data/plant-many.ts', `${SHOOTS}`, `${READINGS_EACH}`]
  const { stdout } = await promisify(execFile)(process.execPath, args, {
    env: { ...process.env, DATABASE_URL: '', ...env },
    maxBuffer: 1e8,
  })
  return { ids: stdout.trimEnd().split('\n'), tookS: Math.round((performance.now() - since) / 1000) }
}

async function took(work: () => Promise<unknown>): Promise<number> {
  const since = performance.now()
  await work()
  return performance.now() - since
}
async function get(address: string, place: string): Promise<void> {
  const response = await fetch(address + place)
  await response.arrayBuffer()
  if (!response.ok) throw new Error(`${place}: ${response.status}`)
}
const some = (ids: readonly string[], seed: number) => {
  const { uniform } = chanceOf(seed, 0, 63)
  return Array.from({ length: SAMPLES }, () => ids[Math.floor(uniform() * ids.length)] as string)
}
/** Each request after the other, at each address in turn; the first of a kind loads code and is not counted. */
async function timed(addresses: readonly string[], places: readonly string[]): Promise<number[]> {
  const address = (i: number) => addresses[i % addresses.length] as string
  for (const one of addresses) await get(one, places[0] as string)
  const times: number[] = []
  for (const [i, place] of places.entries()) times.push(await took(() => get(address(i), place)))
  return times
}

const reading = (sensor: string, temp: number) => {
  const now = instant(Date.now())
  const of = { by: { device: 'logger-2' }, kind: 'reading', cook: 'hero', sensor, temp: `${temp.toFixed(1)} °C` }
  return { id: entryId(now, randomBytes(10)), at: whenText(now), ...of }
}
async function send(address: string, shoot: string, entries: readonly object[]): Promise<number> {
  const response = await fetch(`${address}/api/shoots/${shoot}/log`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ sent: whenText(instant(Date.now())), entries }),
    signal: AbortSignal.timeout(20_000),
  })
  await response.arrayBuffer()
  return response.status
}

/** From a reading that says something new to the forecast that it brings, heard at the other process. */
async function reforecasts(addresses: readonly string[], ids: readonly string[]): Promise<number[]> {
  const times: number[] = []
  for (const [i, shoot] of ids.slice(0, LIVE_SHOOTS).entries()) {
    const [here, there] = [addresses[i % addresses.length], addresses[(i + 1) % addresses.length]] as [string, string]
    const listener = new Listener(there, shoot)
    await heard(listener, 1)
    for (let round = 0; round < SAMPLES / LIVE_SHOOTS; round++) {
      // Two readings within two seconds share a forecast; each here has one of its own.
      await setTimeout(2100)
      const before = listener.forecasts.length
      const since = Date.now()
      await send(here, shoot, [reading('core', 45 + 4 * round)])
      await heard(listener, before + 1)
      times.push((listener.forecasts[before]?.at ?? Number.NaN) - since)
    }
    listener.stop()
  }
  return times
}
async function heard(listener: Listener, count: number): Promise<void> {
  for (const most = Date.now() + 30_000; listener.forecasts.length < count; await setTimeout(5))
    if (Date.now() > most) throw new Error('No forecast came within 30 s.')
}

async function measured(mode: string, apps: readonly RunningApp[], ids: readonly string[], seed: number) {
  const addresses = apps.map(({ address }) => address)
  const chosen = some(ids, seed)
  const kinds: Record<string, number[]> = {
    list: await timed(addresses, chosen.map(() => '/api/shoots')),
    list_page: await timed(addresses, chosen.map(() => '/')),
    open: await timed(addresses, chosen.map((id) => `/api/shoots/${id}`)),
    open_page: await timed(addresses, chosen.map((id) => `/shoots/${id}/plan`)),
    log: await timed(addresses, chosen.map((id) => `/api/shoots/${id}/log`)),
    archive: await timed(addresses, chosen.map((id) => `/api/shoots/${id}/archive`)),
    reforecast: await reforecasts(addresses, ids),
  }
  return Object.fromEntries(
    Object.entries(kinds).flatMap(([kind, times]) => [
      [`${mode}_${kind}_ms_p50`, Math.round(at(times, 0.5))],
      [`${mode}_${kind}_ms_p95`, Math.round(at(times, 0.95))],
    ]),
  )
}

/** Loggers that send once a second, whatever the answers take. */
async function load(mode: string, apps: readonly RunningApp[], ids: readonly string[]) {
  const times: number[] = []
  const statuses = new Map<number | string, number>()
  const count = (what: number | string) => statuses.set(what, (statuses.get(what) ?? 0) + 1)
  let kept = 0
  const logger = async (n: number) => {
    const { address } = apps[n % apps.length] as RunningApp
    const began = Date.now() + (1000 * n) / LOGGERS
    const sent: Promise<void>[] = []
    for (let s = 0; s < LOAD_S; s++) {
      await setTimeout(Math.max(0, began + 1000 * s - Date.now()))
      const entries = Array.from({ length: ROUNDS }, () => PROBES.map((sensor) => reading(sensor, 20 + s / 2))).flat()
      const since = performance.now()
      const one = send(address, ids[n % LIVE_AT_ONCE] as string, entries).then(
        (status) => {
          count(status)
          times.push(performance.now() - since)
          if (status === 200) kept += entries.length
        },
        (fault) => {
          count((fault as Error).name)
        },
      )
      sent.push(one)
    }
    await Promise.all(sent)
  }
  const tookS = (await took(() => Promise.all(Array.from({ length: LOGGERS }, (_, n) => logger(n))))) / 1000
  const others = [...statuses].filter(([status]) => status !== 200).reduce((sum, [, n]) => sum + n, 0)
  return {
    [`${mode}_readings_a_second`]: Math.round(kept / tookS),
    [`${mode}_load_ms_p50`]: Math.round(at(times, 0.5)),
    [`${mode}_load_ms_p95`]: Math.round(at(times, 0.95)),
    [`${mode}_load_not_kept`]: others,
  }
}

/** A thousand shoots with a million readings, by two processes on a PostgreSQL, and by one with a folder beside. */
export async function prove({ seed }: { readonly seed: number }): Promise<Record<string, number>> {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-many-'))
  const postgres = await startPostgres()
  const apps: RunningApp[] = []
  const stopAll = async () => Promise.all(apps.splice(0).map((app) => app.stop()))
  try {
    const env = { DATABASE_URL: await postgres.createDatabase() }
    const planted = await plant(env)
    for (let i = 0; i < 2; i++) apps.push(await startApp(folder, '0', { env }))
    const server = await measured('server', apps, planted.ids, seed)
    const loaded = await load('server', apps, planted.ids)
    await stopAll()
    const beside = await plant({ EMBERSLATE_DATA: folder })
    const since = performance.now()
    apps.push(await startApp(folder))
    const startS = Math.round((performance.now() - since) / 1000)
    const embedded = await measured('embedded', apps, beside.ids, seed)
    const figures = {
      shoots: SHOOTS,
      readings: SHOOTS * READINGS_EACH,
      server_plant_s: planted.tookS,
      ...server,
      ...loaded,
      embedded_plant_s: beside.tookS,
      embedded_start_s: startS,
      ...embedded,
      ...(await load('embedded', apps, beside.ids)),
    } as Record<string, number>
    const slow = ['list', 'open', 'reforecast', 'archive'].filter(
      (kind) => !((figures[`server_${kind}_ms_p95`] ?? Infinity) < WITHIN_MS),
    )
    const few = (figures.server_readings_a_second ?? 0) < SHARE_ANSWERED * LOGGERS * ROUNDS * PROBES.length || figures.server_load_not_kept !== 0
    if (slow.length > 0 || few) throw new Error(`Slow: ${slow.join(', ')}; few: ${few}\n${JSON.stringify(figures, null, 2)}`)
    return figures
  } finally {
    await stopAll()
    await postgres.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}
