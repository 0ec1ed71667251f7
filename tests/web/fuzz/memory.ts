import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

const WAIT_MS = 20_000
const MB = 1e6

export interface Memory {
  /** What is held after all that can be let go is let go, outside of other threads. */
  readonly heldMb: number
  readonly rssMb: number
}

/** Asks a server that was started with `env` what memory it holds. */
export function memoryOf(): {
  readonly env: Record<string, string>
  ask(pid: number): Promise<Memory>
  remove(): void
} {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-memory-'))
  const file = path.join(folder, 'memory.json')
  const ask = async (pid: number): Promise<Memory> => {
    rmSync(file, { force: true })
    process.kill(pid, 'SIGUSR2')
    for (const until = Date.now() + WAIT_MS; !existsSync(file); ) {
      if (Date.now() > until) throw new Error('The server does not say what memory it holds.')
      await new Promise((done) => setTimeout(done, 50))
    }
    const { rss, heapUsed, external } = JSON.parse(readFileSync(file, 'utf8'))
    return { heldMb: (heapUsed + external) / MB, rssMb: rss / MB }
  }
  return {
    env: { NODE_OPTIONS: `--require ${path.resolve('tests/web/fuzz/say-memory.cjs')}`, EMBERSLATE_MEMORY_FILE: file },
    ask,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}
