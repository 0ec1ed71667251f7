import { execFileSync } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

/** First what initdb makes (`initial`), then from it an empty database with our tables (`pg`). */
const MAKE = `
  const [folder] = process.argv.slice(1)
  import('@electric-sql/pglite')
    .then(async ({ PGlite }) => (await PGlite.create(folder + '/initial')).close())
    .then(() => require('node:fs').cpSync(folder + '/initial', folder + '/pg', { recursive: true }))
    .then(() => import('./lib/data/client.ts'))
    .then(async ({ openDatabase }) => (await openDatabase(folder)).close())
`

/** Before the first suite: an empty database is made once for all, because that takes seconds and copying it does not. */
export default function setup() {
  if (process.env.EMBERSLATE_EMPTY) return
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-empty-'))
  execFileSync(process.execPath, ['--conditions=react-server', '--import=tsx', '-e', MAKE, folder])
  process.env.EMBERSLATE_EMPTY = folder
  return () => rmSync(folder, { recursive: true, force: true })
}

/** A data folder with an empty database in it, as if the app had opened here once. */
export function emptyDataFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-data-'))
  putEmptyDatabase(folder)
  return folder
}
export function putEmptyDatabase(folder: string) {
  const empty = process.env.EMBERSLATE_EMPTY
  if (!empty) throw new Error('The empty database was not made. Run the suites by tests/vitest.config.mjs.')
  rmSync(path.join(folder, 'pg'), { recursive: true, force: true })
  cpSync(path.join(empty, 'pg'), path.join(folder, 'pg'), { recursive: true })
}
