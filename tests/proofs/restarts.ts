import { randomBytes } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { entryId } from '../../lib/log/entry-id'
import { whenText } from '../../lib/log/fields'
import { instant } from '../../lib/units'
import { Listener, lossesOf, type Outage, waitsOf, Writers } from '../data/under-restarts'
import { type Ending, type OwnPostgres, startPostgres } from '../postgres'
import { type RunningApp, startApp } from '../web/server'

const PER_SECOND = 50
const SECONDS = 75
const SHOOTS = 4
const LISTENERS_EACH = 3
/** When it ends, how, and how long it stays away before it is started again. */
const ENDS: readonly (readonly [atS: number, how: Ending, awayS: number])[] = [
  [12, 'fast', 0],
  [32, 'immediate', 0],
  [52, 'fast', 4],
]
const WITHIN_MS = 5000
const share = (values: readonly number[], of: number) =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(of * values.length))] ?? Number.NaN

/** PostgreSQL ends three times under writes; nothing acknowledged is lost, and who listens is up to date by itself. */
export async function prove(): Promise<Record<string, number>> {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-restarts-'))
  const postgres = await startPostgres()
  const apps: RunningApp[] = []
  try {
    const env = { DATABASE_URL: await postgres.createDatabase() }
    for (let i = 0; i < 2; i++) apps.push(await startApp(folder, '0', { env }))
    const figures = { ...(await underWrites(postgres, apps)), ...(await withoutTheLeader(apps)) }
    const wrong =
      figures.lost + figures.doubled + figures.moved + figures.misplaced + figures.other_answers + figures.no_curves
    const late = Math.max(figures.first_line_ms_most, figures.wait_ms_most, figures.taken_over_ms)
    if (wrong > 0 || figures.acknowledged < PER_SECOND * SECONDS || !(late <= WITHIN_MS))
      throw new Error(JSON.stringify(figures, null, 2))
    return figures
  } catch (fault) {
    // A process that ended says why.
    throw new Error(apps.map((app) => app.said().split('\n').slice(-20).join('\n')).join('\n\n'), { cause: fault })
  } finally {
    await Promise.all(apps.map((app) => app.stop()))
    await postgres.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}

const addressesOf = (apps: readonly RunningApp[]) => apps.map(({ address }) => address)
async function newShoot(address: string, n: number): Promise<string> {
  const kept = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
  const document = { ...kept, date: new Date().toISOString().slice(0, 10) }
  const response = await fetch(`${address}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ writeId: `restarts-${n}`, document }),
  })
  return (await response.json()).id
}

async function underWrites(postgres: OwnPostgres, apps: readonly RunningApp[]) {
  const addresses = addressesOf(apps)
  const shoots: string[] = []
  for (let n = 0; n < SHOOTS; n++) shoots.push(await newShoot(addresses[n % 2] as string, n))
  const listeners = addresses.flatMap((address) =>
    shoots.flatMap((shoot) =>
      Array.from({ length: LISTENERS_EACH }, () => ({ shoot, listener: new Listener(address, shoot) })),
    ),
  )
  const writers = new Writers(addresses, shoots)
  const stop = () => {
    writers.stop()
    for (const { listener } of listeners) listener.stop()
  }
  const outages: Outage[] = []
  const ending = (async () => {
    const began = Date.now()
    for (const [atS, how, awayS] of ENDS) {
      await setTimeout(Math.max(0, began + atS * 1000 - Date.now()))
      const from = Date.now()
      await postgres.halt(how)
      await setTimeout(awayS * 1000)
      await postgres.start()
      outages.push({ from, to: Date.now() })
    }
  })()
  try {
    await Promise.all([writers.run(PER_SECOND, SECONDS), ending])
    await writers.settled(30_000)
    await setTimeout(WITHIN_MS)
  } finally {
    // Or whoever still writes keeps a proof that failed from ending.
    stop()
  }
  const losses = await lossesOf(addresses[1] as string, writers)
  const all = listeners.map(({ listener, shoot }) => waitsOf(listener, shoot, writers, outages))
  const firsts = outages.map((_, i) => Math.max(...all.map((one) => one.firsts[i] as number)))
  const waits = all.flatMap((one) => one.waits)
  const answered = (status: number) => writers.statuses.get(status) ?? 0
  const tried = [...writers.statuses.values()].reduce((sum, count) => sum + count, 0)
  return {
    acknowledged: writers.kept.size,
    ...losses,
    listeners: listeners.length,
    misplaced: listeners.reduce((sum, { listener }) => sum + listener.misplaced, 0),
    streams_cut: listeners.reduce((sum, { listener }) => sum + listener.cuts, 0),
    answered_503: answered(503),
    other_answers: tried - answered(200) - answered(503),
    ...Object.fromEntries(outages.map(({ from, to }, i) => [`away_ms_${i + 1}`, to - from])),
    ...Object.fromEntries(firsts.map((ms, i) => [`first_line_ms_${i + 1}`, ms])),
    first_line_ms_most: Math.max(...firsts),
    wait_ms_p50: share(waits, 0.5),
    wait_ms_p99: share(waits, 0.99),
    wait_ms_most: share(waits, 1),
  }
}

/** The process that forecasts a day is killed; the other goes on, for those who listen to it. */
async function withoutTheLeader([leading, following]: readonly RunningApp[]) {
  if (!leading || !following) throw new Error('Two apps are needed.')
  const shoot = await newShoot(leading.address, SHOOTS)
  const first = new Listener(leading.address, shoot)
  await until(() => first.forecasts.length > 0)
  const second = new Listener(following.address, shoot)
  await until(() => second.forecasts.length > 0)
  await mark(following.address, shoot, 'meat-on')
  await until(() => second.forecasts.length > 1)
  const led = { forecasts: second.forecasts.length, no_curves: second.forecasts.filter((one) => !one.hasCurves).length }
  process.kill(leading.pid, 'SIGKILL')
  const killed = Date.now()
  first.stop()
  await mark(following.address, shoot, 'pull')
  await until(() => second.forecasts.length > led.forecasts)
  second.stop()
  return { ...led, taken_over_ms: (second.forecasts.at(led.forecasts)?.at ?? Number.NaN) - killed }
}
async function mark(address: string, shoot: string, moment: string): Promise<void> {
  const now = instant(Date.now())
  const entry = { id: entryId(now, randomBytes(10)), at: whenText(now), by: { device: 'phone-a' }, kind: 'mark' }
  await fetch(`${address}/api/shoots/${shoot}/log`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ sent: whenText(now), entries: [{ ...entry, cook: 'hero', moment }] }),
  })
}
async function until(holds: () => boolean): Promise<void> {
  for (const most = Date.now() + 60_000; !holds(); await setTimeout(20))
    if (Date.now() > most) throw new Error('It took longer than a minute.')
}
