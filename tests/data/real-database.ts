import { execFile } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { existsSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { type Database, database } from '../../lib/data/client'
import { closeBus } from '../../lib/data/server/bus'
import { emptyDataFolder } from '../empty-database'
import { copyOfMigrated, onServer } from '../migrated-database'

const shared = globalThis as { emberslateDatabase?: Promise<Database> }

/** A database of its own for one test, in a folder or on a server as the suite is run; `reopen` takes what this returns. */
export async function freshDatabase(): Promise<string> {
  if (!onServer()) return freshFolder()
  const url = await copyOfMigrated()
  pointAt(url)
  return url
}

/** A data folder of its own for one test that is about the folder itself. */
export function freshFolder(): string {
  const folder = emptyDataFolder()
  pointAt(folder)
  return folder
}

/** A place of its own to keep files in, where in a folder no database has to be opened. */
export async function freshPlace(): Promise<string> {
  if (onServer()) return freshDatabase()
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-place-'))
  pointAt(folder)
  return folder
}

function pointAt(place: string) {
  const folder = path.isAbsolute(place)
  process.env.DATABASE_URL = folder ? '' : place
  // With a server there is no data folder at all: whoever makes one is caught by closeAll.
  process.env.EMBERSLATE_DATA = folder
    ? place
    : path.join(tmpdir(), `emberslate-no-folder-${randomBytes(6).toString('hex')}`)
}

/** Ends the process's hold on its database, as the end of the process would. */
export async function closeAll() {
  await closeBus()
  await (await shared.emberslateDatabase)?.close()
  shared.emberslateDatabase = undefined
  const folder = process.env.EMBERSLATE_DATA ?? ''
  if (process.env.DATABASE_URL && existsSync(folder))
    throw new Error(`With a server, somebody made the folder ${folder}.`)
}

export function reopen(place: string): Promise<Database> {
  pointAt(place)
  return database()
}

/** What a second process says that wants the same folder. */
export const openElsewhere = (folder: string) =>
  new Promise<string>((resolve) => {
    const script =
      "import('./lib/data/folder/lock.ts').then((m) => m.lockFolder(process.argv[1])).then(() => console.log('taken'), (e) => console.log(e.message))"
    execFile(
      process.execPath,
      ['--conditions=react-server', '--import=tsx', '-e', script, folder],
      (_fault, out, err) => resolve(out + err),
    )
  })
