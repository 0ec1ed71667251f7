import { execFile } from 'node:child_process'
import { type Database, database } from '../../lib/data/client'
import { emptyDataFolder } from '../empty-database'

const shared = globalThis as { emberslateDatabase?: Promise<Database> }

/** A data folder of its own for one test; the database in it opens with the first operation. */
export function freshFolder(): string {
  const folder = emptyDataFolder()
  process.env.EMBERSLATE_DATA = folder
  return folder
}

/** Ends the process's hold on its database, as the end of the process would. */
export async function closeAll() {
  await (await shared.emberslateDatabase)?.close()
  shared.emberslateDatabase = undefined
}

export function reopen(folder: string): Promise<Database> {
  process.env.EMBERSLATE_DATA = folder
  return database()
}

/** What a second process says that wants the same folder. */
export const openElsewhere = (folder: string) =>
  new Promise<string>((resolve) => {
    const script =
      "import('./lib/data/lock.ts').then((m) => m.lockFolder(process.argv[1])).then(() => console.log('taken'), (e) => console.log(e.message))"
    execFile(
      process.execPath,
      ['--conditions=react-server', '--import=tsx', '-e', script, folder],
      (_fault, out, err) => resolve(out + err),
    )
  })
