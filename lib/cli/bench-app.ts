import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { hearAll } from './hear-all'
import { hearMoves } from './hear-moves'
import { ownScriptKb } from './own-script'

const ADDRESS = /http:\/\/127\.0\.0\.1:\d+/
/** Of the events of a shoot, with a reading each second for so long. */
const LISTENERS = 200
const HEARD_S = 10
/** Calls moved by a reading: the median of so many is told. */
const MOVES = 7

async function start(folder: string) {
  const since = performance.now()
  const env = { ...process.env, PORT: '0', EMBERSLATE_DATA: folder }
  const child = spawn(process.execPath, ['lib/cli/start.mjs'], { env, stdio: ['ignore', 'pipe', 'inherit'] })
  const address = await new Promise<string>((resolve, reject) => {
    let said = ''
    child.stdout.on('data', (bytes) => {
      said += bytes
      const found = ADDRESS.exec(said)
      if (found) resolve(found[0])
    })
    child.once('exit', () => reject(new Error(`The app did not start: ${said}`)))
  })
  const startedS = (performance.now() - since) / 1000
  const stop = () =>
    new Promise<void>((resolve) => {
      child.once('exit', () => resolve())
      child.kill('SIGTERM')
    })
  return { address, pid: child.pid ?? 0, startedS, stop }
}

/** The heaviest page's own script. */
async function mostScriptKb(address: string): Promise<number> {
  const { shoots } = (await (await fetch(`${address}/api/shoots`)).json()) as { shoots: { id: string }[] }
  const screens = ['plan', 'day', 'calls', 'card', 'set', 'set/desk'].map((page) => `/shoots/${shoots[0]?.id}/${page}`)
  return Math.max(...(await ownScriptKb(address, ['/', '/shoots/new', ...screens])).values())
}

/** Milliseconds to the slowest answer of the health check while the server lays out a day that it does not know. */
async function slowestBesideDayMs(address: string): Promise<number> {
  const document = { ...JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8')), seed: 7 }
  const made = await fetch(`${address}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ writeId: 'bench-day-0001', document }),
  })
  if (!made.ok) throw new Error(`The day to lay out was not taken: ${await made.text()}`)
  const { id } = (await made.json()) as { id: string }
  let laidOut = false
  const page = fetch(`${address}/shoots/${id}/day`).then(async (answer) => {
    const text = await answer.text()
    if (!answer.ok) throw new Error(`The day was not laid out: ${answer.status} ${text.slice(0, 200)}`)
  })
  const ended = () => {
    laidOut = true
  }
  page.then(ended, ended)
  let slowest = 0
  while (!laidOut) {
    const asked = performance.now()
    await (await fetch(`${address}/healthz`)).text()
    slowest = Math.max(slowest, performance.now() - asked)
  }
  await page
  return slowest
}

/** The second start of a built app, the heaviest page's own script, and how soon 200 listeners hear a reading. */
export async function benchApp(): Promise<Record<string, number>> {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-bench-'))
  try {
    await (await start(folder)).stop() // the first start makes the database
    const app = await start(folder)
    const own_script_kb = await mostScriptKb(app.address)
    const health_beside_day_ms = await slowestBesideDayMs(app.address)
    const heard = await hearAll(app, LISTENERS, HEARD_S)
    const moves = (await hearMoves(app, MOVES)).sort((a, b) => a - b)
    await app.stop()
    return {
      warm_start_s: app.startedS,
      own_script_kb,
      health_beside_day_ms,
      sse_200_p99_ms: heard.p99Ms,
      reading_to_move_ms: moves[MOVES >> 1] as number,
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
