/**
 * `npm run pictures`: takes the guides' pictures from the app on the demo's own day and writes them to public/help, with
 * what they show in app/help/pictures.json. With --check nothing is written: it says which no longer show what the
 * screens do.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { openBrowser } from '../web/browser'
import { startApp } from '../web/server'
import { SHOTS } from './shots'
import { type Place, type Taken, take } from './take'

const FOLDER = 'public/help'
const MANIFEST = 'app/help/pictures.json'
/** The afternoon of the demo's day, in its zone. */
const THAT_DAY = Date.parse('2027-05-15T20:10:00+01:00')

type Manifest = Record<string, Pick<Taken, 'width' | 'height' | 'shows'>>

async function placeAt(address: string, shiftMs: number): Promise<Place> {
  const { shoots } = (await (await fetch(`${address}/api/shoots`)).json()) as {
    shoots: { id: string; title: string }[]
  }
  const demo = shoots.find(({ title }) => title === 'Leg of lamb at the walled garden')
  if (!demo) throw new Error('The demo shoot is not there.')
  return { address, shoot: demo.id, shiftMs }
}

async function takeAll(only: readonly string[]): Promise<Taken[]> {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-pictures-'))
  const shiftMs = THAT_DAY - Date.now()
  const app = await startApp(folder, '0', {
    env: {
      SHIFT_MS: String(shiftMs),
      NODE_OPTIONS: `--import ${pathToFileURL('tests/pictures/shifted-clock.mjs')}`,
    },
  })
  const browser = await openBrowser()
  try {
    const place = await placeAt(app.address, shiftMs)
    const taken: Taken[] = []
    for (const shot of SHOTS.filter(({ name }) => only.length === 0 || only.includes(name))) {
      const one = await take(browser, shot, place)
      console.log(`${one.name}: ${one.width} by ${one.height}, ${Math.round(one.webp.length / 1000)} kB`)
      taken.push(one)
    }
    return taken
  } finally {
    await browser.close()
    await app.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}

function write(taken: readonly Taken[], before: Manifest) {
  const known: Manifest = {}
  for (const { name } of SHOTS) {
    const one = taken.find((shot) => shot.name === name)
    const entry = one ? { width: one.width, height: one.height, shows: one.shows } : before[name]
    if (entry) known[name] = entry
    if (one) writeFileSync(path.join(FOLDER, `${name}.webp`), one.webp)
  }
  for (const file of readdirSync(FOLDER)) if (!known[path.parse(file).name]) rmSync(path.join(FOLDER, file))
  writeFileSync(MANIFEST, `${JSON.stringify(known, null, 2)}\n`)
}

async function main() {
  const words = process.argv.slice(2)
  const only = words.filter((word) => !word.startsWith('--'))
  const before = JSON.parse(readFileSync(MANIFEST, 'utf8')) as Manifest
  const taken = await takeAll(only)
  if (!words.includes('--check')) return write(taken, before)
  const stale = taken.filter(({ name, shows }) => before[name]?.shows !== shows).map(({ name }) => name)
  console.log(stale.length === 0 ? 'Every picture shows what the screens do.' : `No longer so: ${stale.join(', ')}.`)
  process.exitCode = stale.length === 0 ? 0 : 1
}

await main()
