import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { brotliDecompressSync } from 'node:zlib'
import { type Browser, chromium, type LaunchOptions } from 'playwright-core'

const FLAGS = [
  '--no-sandbox', // the package's Chromium brings no sandbox helper, and containers often run as root
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

const PACK = path.resolve('node_modules/@sparticuz/chromium/bin')

function lacksLibraries(file: string) {
  try {
    return execFileSync('ldd', [file], { encoding: 'utf8' }).includes('not found')
  } catch {
    return false
  }
}

/** The package brings the libraries that a bare container lacks, packed; they stand in only where some are missing. */
function unpackLibraries() {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-lib-'))
  execFileSync('tar', ['-x', '-C', folder], {
    input: brotliDecompressSync(readFileSync(path.join(PACK, 'al2023.tar.br'))),
  })
  const libraries = path.join(folder, 'lib')
  process.env.LD_LIBRARY_PATH = [libraries, process.env.LD_LIBRARY_PATH].filter(Boolean).join(':')
}

/** The Chromium inside its npm package (Linux x64), unpacked once to the temporary folder. */
async function packaged(): Promise<string | undefined> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined
  const { default: pack } = await import('@sparticuz/chromium')
  const file = await pack.executablePath(PACK)
  if (lacksLibraries(file)) unpackLibraries()
  return file
}

async function executable(): Promise<string> {
  const named = process.env.CHROMIUM_PATH
  if (named) return named
  const installed = ['/usr/bin/chromium', '/usr/bin/google-chrome'].find((file) => existsSync(file))
  const found = (await packaged()) ?? installed
  if (!found) throw new Error('No Chromium for the journeys. Install one and set CHROMIUM_PATH to it.')
  return found
}

/** How to launch it. */
export const chromiumAt = async (flags: readonly string[] = []): Promise<LaunchOptions> => ({
  executablePath: await executable(),
  headless: true,
  args: [...FLAGS, ...flags],
})

/**
 * A browser for a journey: the one that stands ready, or, with flags of its own, another. There is no way round it:
 * without a browser the journeys fail, they are not skipped.
 */
export async function openBrowser(flags: readonly string[] = []): Promise<Browser> {
  const ready = process.env.EMBERSLATE_BROWSER
  return ready && flags.length === 0 ? chromium.connect(ready) : chromium.launch(await chromiumAt(flags))
}
