import { spawn } from 'node:child_process'
import { rmSync } from 'node:fs'
import { emptyDataFolder } from '../empty-database'

export interface ReadyApp {
  readonly address: string
  readonly folder: string
  readonly pid: number
}
export interface RunningApp extends ReadyApp {
  /** All that it has written, on both of its outputs. */
  said(): string
  stop(): Promise<void>
}

const ADDRESS = /http:\/\/127\.0\.0\.1:\d+/
/** A build may have to come first when one suite is run alone. */
const START_MS = 300_000

/** The app that all journeys share (one-app.ts); what one does there the others may see in the list of shoots. */
export function readyApp(): ReadyApp {
  const ready = process.env.EMBERSLATE_APP
  if (!ready) throw new Error('The shared app was not started. Run the suites by tests/vitest.config.mjs.')
  return JSON.parse(ready) as ReadyApp
}

/** What is said to the start command besides. */
export interface StartedWith {
  readonly args?: readonly string[]
  readonly env?: Readonly<Record<string, string>>
}

/**
 * Starts the app by the command a stranger uses, on a free port. Without a folder it has one of its own, with an empty
 * database made before and removed when it stops; a folder that is given may begin without one.
 */
export async function startApp(folder?: string, port = '0', { args = [], env }: StartedWith = {}): Promise<RunningApp> {
  const data = folder ?? emptyDataFolder()
  const child = spawn(process.execPath, ['lib/cli/start.mjs', ...args], {
    env: { ...process.env, NODE_ENV: 'production', PORT: port, EMBERSLATE_DATA: data, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  let said = ''
  const address = await new Promise<string>((resolve, reject) => {
    const timer = setTimeout(() => child.kill(), START_MS)
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (bytes) => {
        said += bytes
        const found = ADDRESS.exec(said)
        if (!found) return
        clearTimeout(timer)
        resolve(found[0])
      })
    child.once('exit', () => reject(new Error(`The app did not start:\n${said}`)))
    child.once('exit', () => clearTimeout(timer))
  })
  const stop = async () => {
    child.kill('SIGTERM')
    await ended
    if (folder === undefined) rmSync(data, { recursive: true, force: true })
  }
  return { address, folder: data, pid: child.pid ?? 0, said: () => said, stop }
}
