import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import os from 'node:os'
import { broken, bytesInWords, type Finding, look, ok } from './finding'

/** As package.json asks it. */
const NODE = [20, 19] as const
export function nodeFinding(version: string): Finding {
  const [major = 0, minor = 0] = version.split('.').map(Number)
  if (major > NODE[0] || (major === NODE[0] && minor >= NODE[1])) return ok('Node', `Node ${version} runs this.`)
  return broken('Node', `Node ${version} is too old.`, `Install Node ${NODE.join('.')} or newer.`)
}

/** The server takes some hundred MB and a browser beside it as much again. [estimate] */
const MEMORY = { broken: 300e6, look: 1000e6 }
export function memoryFinding(free: number): Finding {
  const left = `${bytesInWords(free)} of memory are free.`
  if (free < MEMORY.broken)
    return broken('Memory', left, 'Close other programs before the day begins, or restart the computer.')
  if (free < MEMORY.look) return look('Memory', left, 'Close programs that nobody needs on the day.')
  return ok('Memory', left)
}
/** What may still be taken; Linux counts its file cache apart. */
export function freeMemory(): number {
  if (!existsSync('/proc/meminfo')) return os.freemem()
  return Number(/MemAvailable:\s+(\d+)/.exec(readFileSync('/proc/meminfo', 'utf8'))?.[1] ?? 0) * 1024
}

export function zoneFinding(zone: string | undefined): Finding {
  if (!zone)
    return look('Time zone', 'The computer does not say its time zone.', 'Set it in the system’s date and time.')
  return ok('Time zone', `The computer’s zone is ${zone}; each shoot has its own.`)
}

const NEEDED = [
  ['letters of the sheets', 'node_modules/@fontsource/sofia-sans-condensed/package.json'],
  ['letters of the sheets', 'node_modules/@fontsource/sofia-sans-semi-condensed/package.json'],
  ['letters of the sheets', 'node_modules/@fontsource/vollkorn/package.json'],
  ['overlay’s painter', 'node_modules/@resvg/resvg-wasm/index_bg.wasm'],
  ['embedded database', 'node_modules/@electric-sql/pglite/dist/pglite.wasm'],
] as const
export function partsFinding(isThere: (file: string) => boolean = existsSync): Finding {
  const missing = [...new Set(NEEDED.filter(([, file]) => !isThere(file)).map(([what]) => what))]
  if (missing.length === 0) return ok('Parts', 'Fonts and WebAssembly are here.')
  return broken(
    'Parts',
    `Missing: ${missing.join(', ')}.`,
    'Remove the folder node_modules, then npm start: it installs them again.',
  )
}

/** What the next start would do first, asked of the start command itself. */
export function buildFinding(): Finding {
  const asked = spawnSync(process.execPath, ['lib/cli/due.mjs'], { encoding: 'utf8', timeout: 30_000 })
  if (asked.status !== 0) return broken('Build', 'It cannot be told whether the build is fresh.', 'npm start says why.')
  const due = JSON.parse(asked.stdout) as readonly string[]
  if (due.length === 0) return ok('Build', 'The build is of these sources.')
  const wait = due.includes('packages') ? 'It takes some minutes and the internet' : 'It takes a minute or two'
  return look(
    'Build',
    `The next npm start first makes: ${due.join(', ')}.`,
    `${wait}: start well before the crew comes.`,
  )
}
