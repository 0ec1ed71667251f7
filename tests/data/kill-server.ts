import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { createInterface } from 'node:readline'
import { buildSync } from 'esbuild'
import { chanceOf } from '../../lib/model/random'

/** Where a killed server keeps what it is given. */
export interface Place {
  /** What names it to the child: EMBERSLATE_DATA, or DATABASE_URL. */
  readonly env: Readonly<Record<string, string>>
  /** Loses the database and leaves the journals; null where the database alone answers. */
  readonly lose: (() => void) | null
  /** Another one, empty. */
  readonly another: () => Promise<Place>
}

/** What many ends by force, each at a random moment of a day with five writers, did to a shoot. */
export interface Killed {
  readonly kills: number
  /** Ends that came while the database was still opening or putting back. */
  readonly atStart: number
  readonly rebuilds: number
  readonly acknowledged: number
  readonly kept: number
  readonly lost: number
  readonly doubled: number
  /** Archives that are not the same to the byte: after a rebuild, and after they were taken in elsewhere. */
  readonly archivesApart: number
}

interface Said {
  readonly open?: readonly string[]
  readonly places?: readonly string[]
  readonly acknowledged?: readonly string[]
}
const WRITER = 'tests/data/day-writer.ts'
/** Made into one file of JavaScript: it is started so often that reading TypeScript each time would be most of the work. */
function writerFile(): string {
  mkdirSync('node_modules/.cache', { recursive: true })
  const outfile = path.join(mkdtempSync('node_modules/.cache/day-writer-'), 'writer.mjs')
  const as = { bundle: true, platform: 'node', format: 'esm', packages: 'external', logLevel: 'error' } as const
  buildSync({ ...as, entryPoints: [WRITER], conditions: ['react-server'], outfile })
  return outfile
}
let writer: string | undefined
export function removeWriter() {
  if (writer) rmSync(path.dirname(writer), { recursive: true, force: true })
  writer = undefined
}

const start = ({ env }: Place, args: readonly string[]) => {
  writer ??= writerFile()
  return spawn(process.execPath, ['--conditions=react-server', writer, ...args], {
    env: { ...process.env, DATABASE_URL: '', EMBERSLATE_DATA: '/nowhere', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
}

/** Runs a writer until `killAfterMs` from its first acknowledgement (or, where negative, from its start), or to its end. */
function run(place: Place, args: readonly string[], killAfterMs: number | null): Promise<Said[]> {
  const child = start(place, args)
  const said: Said[] = []
  let [errors, killed, armed] = ['', false, false]
  const kill = (afterMs: number) => {
    armed = true
    setTimeout(() => {
      killed = true
      child.kill('SIGKILL')
    }, afterMs)
  }
  if (killAfterMs !== null && killAfterMs < 0) kill(-killAfterMs)
  createInterface(child.stdout).on('line', (line) => {
    const one = parsed(line)
    if (one) said.push(one)
    if (killAfterMs !== null && !armed && one?.acknowledged) kill(killAfterMs)
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
const START_MS = 2000
/** One end in so many comes while the server starts. */
const AT_START = 5

/** What was acknowledged so far, held against what is there at each opening. */
class Account {
  readonly acknowledged = new Set<string>()
  lost = 0
  doubled = 0
  kept = 0

  look(said: readonly Said[]) {
    const since = new Set(said.flatMap((one) => one.acknowledged ?? []))
    const here = said.find((one) => one.open)
    if (here?.open && here.places) {
      const names = new Set(here.open)
      this.lost += [...this.acknowledged].filter((name) => !names.has(name)).length
      this.doubled += here.open.length - names.size + here.places.length - new Set(here.places).size
      this.kept = names.size
    }
    for (const name of since) this.acknowledged.add(name)
  }
}

/** Before one start in `rebuildEach` the database is lost where it can be rebuilt. */
export async function killServer(place: Place, kills: number, seed: number, rebuildEach: number): Promise<Killed> {
  const { uniform } = chanceOf(seed, 0, 61)
  const account = new Account()
  let [atStart, rebuilds] = [0, 0]
  for (let k = 0; k < kills; k++) {
    if (place.lose && k % rebuildEach === rebuildEach - 1) {
      place.lose()
      rebuilds++
    }
    const starting = k % AT_START === 2
    if (starting) atStart++
    const killAfterMs = starting ? -Math.ceil(1 + uniform() * START_MS) : uniform() * WRITES_MS
    account.look(await run(place, ['write', String(k)], killAfterMs))
  }
  const archivesApart = await compareArchives(place, account)
  if (place.lose) rebuilds++
  const { lost, doubled, kept, acknowledged } = account
  return { kills, atStart, rebuilds, acknowledged: acknowledged.size, kept, lost, doubled, archivesApart }
}

/** The archive as it is, after a rebuild from the journals, and of another place that took it in. */
async function compareArchives(place: Place, account: Account): Promise<number> {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-archives-'))
  const [first, rebuilt, taken] = ['first', 'rebuilt', 'taken'].map((name) => path.join(folder, name)) as [
    string,
    string,
    string,
  ]
  try {
    account.look(await run(place, ['archive', first], null))
    const archive = readFileSync(first)
    if (place.lose) {
      place.lose()
      account.look(await run(place, ['archive', rebuilt], null))
    }
    account.look(await run(await place.another(), ['take', first, taken], null))
    const others = [...(place.lose ? [rebuilt] : []), taken]
    return others.filter((name) => !archive.equals(readFileSync(name))).length
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
