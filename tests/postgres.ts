import { execFile, execFileSync } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import net from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { promisify } from 'node:util'
import pg from 'pg'

/** How a server ends: `fast` as an administrator would, `immediate` as in a crash. */
export type Ending = 'fast' | 'immediate'

/** A PostgreSQL of one's own on the loopback address, in a folder that goes with it. */
export interface OwnPostgres {
  readonly url: string
  /** The address of a new database: an empty one, or a copy of `template`. */
  createDatabase(template?: string): Promise<string>
  /** Ends it and leaves its data, for a while without a server; `start` goes on from there. */
  halt(how?: Ending): Promise<void>
  start(): Promise<void>
  restart(how?: Ending): Promise<void>
  /** Ends it and removes its data. */
  stop(): Promise<void>
}

const run = promisify(execFile)
const NONE =
  'There is no PostgreSQL here: neither initdb in PATH nor /usr/lib/postgresql/*/bin. Install one (apt-get install postgresql).'

/** Where initdb and pg_ctl are: in PATH, or the newest of Debian's folders, which are not in PATH. */
function programs(): string {
  const debian = '/usr/lib/postgresql'
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : []
  const folders = [
    ...(process.env.PATH ?? '').split(path.delimiter),
    ...versions.map((version) => path.join(debian, version, 'bin')),
  ]
  const found = folders.find((one) => ['initdb', 'pg_ctl'].every((name) => existsSync(path.join(one, name))))
  if (!found) throw new Error(NONE)
  return found
}

const freePort = () =>
  new Promise<number>((resolve, reject) => {
    const server = net.createServer().once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as net.AddressInfo
      server.close(() => resolve(port))
    })
  })

/** PostgreSQL refuses to run as root, so root starts it as the user that the package made. */
function owner(): { uid: number; gid: number } | null {
  if (process.getuid?.() !== 0) return null
  const id = (flag: string) => Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' }))
  return { uid: id('-u'), gid: id('-g') }
}

/**
 * Starts one. `synced: false` does without fsync, for tests that end processes and not machines; the proofs measure with it.
 */
export async function startPostgres({ synced = true } = {}): Promise<OwnPostgres> {
  const bin = programs()
  const as = owner()
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-postgres-'))
  if (as) chownSync(folder, as.uid, as.gid)
  const port = await freePort()
  const data = path.join(folder, 'data')
  const how = (program: string, args: readonly string[]): [string, string[]] => {
    const file = path.join(bin, program)
    return as ? ['runuser', ['-u', 'postgres', '--', file, ...args]] : [file, [...args]]
  }
  const call = (program: string, ...args: string[]) => run(...how(program, args), { cwd: folder })
  const STOP = ['stop', '-D', data, '-w', '-m']
  const settings = `-p ${port} -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c fsync=${synced ? 'on' : 'off'}`

  const start = async () => {
    await call('pg_ctl', 'start', '-D', data, '-w', '-s', '-l', path.join(folder, 'log'), '-o', settings)
  }
  const halt = async (ending: Ending = 'fast') => {
    await call('pg_ctl', ...STOP, ending)
  }
  const remove = () => rmSync(folder, { recursive: true, force: true })
  /** A test run that ends early leaves no server behind. */
  const atExit = () => {
    try {
      execFileSync(...how('pg_ctl', [...STOP, 'immediate']), { cwd: folder, stdio: 'ignore' })
    } catch {
      // It was not running.
    }
    remove()
  }
  process.once('exit', atExit)
  await call('initdb', '-D', data, '-U', 'emberslate', '-A', 'trust', '-E', 'UTF8', '--no-locale', '--no-sync')
  await start()
  const url = `postgresql://emberslate@127.0.0.1:${port}/postgres`
  return {
    url,
    createDatabase: (template) => createDatabase(url, template),
    halt,
    start,
    restart: async (ending) => {
      await halt(ending)
      await start()
    },
    stop: async () => {
      process.off('exit', atExit)
      await halt('immediate').catch(() => undefined)
      remove()
    },
  }
}

/** Makes a database on a server that runs, by any address of it; returns the new one's address. A copy's name begins as its template's. */
export async function createDatabase(server: string, template?: string): Promise<string> {
  const name = `${template ?? 't'}_${randomBytes(8).toString('hex')}`
  const client = new pg.Client({ connectionString: server })
  await client.connect()
  try {
    await client.query(`CREATE DATABASE ${name}${template ? ` TEMPLATE ${template}` : ''}`)
  } finally {
    await client.end()
  }
  const url = new URL(server)
  url.pathname = `/${name}`
  return url.href
}
