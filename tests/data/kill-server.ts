import { spawn } from 'node:child_process'
import { rmSync } from 'node:fs'
import path from 'node:path'
import { createInterface } from 'node:readline'
import { chanceOf } from '../../lib/model/random'

/** What many ends by force, each at a random moment under writes, did to a log. */
export interface Killed {
  readonly kills: number
  /** Ends that came while the database was still opening or putting back. */
  readonly atStart: number
  readonly rebuilds: number
  readonly acknowledged: number
  readonly kept: number
  readonly lost: number
  readonly doubled: number
}

type Said = { open?: string[]; positions?: number[]; acknowledged?: string[] }
const FLAGS = ['--conditions=react-server', '--import=tsx', 'tests/data/log-writer.ts']

/** Runs a writer until `killAfterMs` from its first acknowledgement (or, where negative, from its start). */
function run(folder: string, mode: 'write' | 'look', killAfterMs: number): Promise<Said[]> {
  const child = spawn(process.execPath, [...FLAGS, mode], {
    env: { ...process.env, EMBERSLATE_DATA: folder },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const said: Said[] = []
  let [errors, killed] = ['', false]
  const kill = (afterMs: number) =>
    setTimeout(() => {
      killed = true
      child.kill('SIGKILL')
    }, afterMs)
  if (mode === 'write' && killAfterMs < 0) kill(-killAfterMs)
  let armed = killAfterMs < 0
  createInterface(child.stdout).on('line', (line) => {
    const one = parsed(line)
    if (one) said.push(one)
    if (mode === 'look' || armed || !one?.acknowledged) return
    armed = true
    kill(killAfterMs)
  })
  child.stderr.on('data', (bytes) => {
    errors += bytes
  })
  return new Promise((resolve, reject) => {
    child.once('close', (code) =>
      killed || code === 0 ? resolve(said) : reject(new Error(`The writer ended by itself (${code}): ${errors}`)),
    )
  })
}
/** The last line may be cut off by the end. */
function parsed(line: string): Said | null {
  try {
    return JSON.parse(line)
  } catch {
    return null
  }
}

const WRITES_MS = 600
const START_MS = 3000
/** One end in so many comes while the server starts. */
const AT_START = 5

const deleted = (folder: string) => rmSync(path.join(folder, 'pg'), { recursive: true, force: true })

/** Before one start in `rebuildEach` the database is lost (by `lose`), and at the end it is deleted. */
export async function killServer(
  folder: string,
  kills: number,
  seed: number,
  rebuildEach: number,
  lose: (folder: string) => void = deleted,
): Promise<Killed> {
  const { uniform } = chanceOf(seed, 0, 61)
  const acknowledged = new Set<string>()
  const sums = { atStart: 0, rebuilds: 0, lost: 0, doubled: 0 }
  const look = (said: readonly Said[]) => {
    for (const { acknowledged: ids } of said) for (const id of ids ?? []) acknowledged.add(id)
    const open = said.find((one) => one.open)
    const ids = new Set(open?.open)
    if (!open) return ids
    // What was acknowledged after the opening is not in it.
    const since = new Set(said.flatMap((one) => one.acknowledged ?? []))
    sums.lost += [...acknowledged].filter((id) => !ids.has(id) && !since.has(id)).length
    sums.doubled += (open.open?.length ?? 0) - ids.size + (open.positions?.length ?? 0) - new Set(open.positions).size
    return ids
  }
  for (let k = 0; k < kills; k++) {
    if (k % rebuildEach === rebuildEach - 1) {
      lose(folder)
      sums.rebuilds++
    }
    const starting = k % AT_START === 2
    if (starting) sums.atStart++
    look(await run(folder, 'write', starting ? -Math.ceil(1 + uniform() * START_MS) : uniform() * WRITES_MS))
  }
  look(await run(folder, 'look', 0))
  deleted(folder)
  const rebuilt = look(await run(folder, 'look', 0))
  return { kills, ...sums, rebuilds: sums.rebuilds + 1, acknowledged: acknowledged.size, kept: rebuilt.size }
}
