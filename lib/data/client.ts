import 'server-only'
import type { Pool } from 'pg'
import { databaseUrl, dataFolder } from './env'
import { openFolder, setDatabaseAside } from './folder/open-folder'
import type { Prisma, PrismaClient } from './generated/client'
import { DatabaseDamaged } from './heed-faults'
import { say, sayFault } from './say'
import { openServer } from './server/open-server'
import { settled } from './unsettled'

export type Database = {
  readonly prisma: PrismaClient
  /** Where journals and files are; a server keeps everything itself, and there is none. */
  readonly folder: string | null
  readonly server: { readonly url: string; readonly pool: Pool } | null
  /** What start-up found and mended, for the log. */
  readonly notes: readonly string[]
  close(): Promise<void>
}

/** Where statements go: the database, or the transaction of a turn. */
export type Tx = Prisma.TransactionClient

/** Next loads this file once per bundle; the database must be opened once per process. */
const shared = globalThis as { emberslateDatabase?: Promise<Database> }

/** The one open database of this process. */
export function database(): Promise<Database> {
  shared.emberslateDatabase ??= opened().catch((fault) => {
    shared.emberslateDatabase = undefined
    throw fault
  })
  return shared.emberslateDatabase
}

/** Lets go of it; the next who asks opens it again. */
export async function closeDatabase(): Promise<void> {
  await (await shared.emberslateDatabase)?.close()
  shared.emberslateDatabase = undefined
}

async function opened(): Promise<Database> {
  const url = databaseUrl()
  return url === null ? openDatabase(dataFolder()) : openServer(url)
}

/** Opens the database in `folder`, brings its tables up to date and puts back from the journals what it lacks. */
export async function openDatabase(folder: string): Promise<Database> {
  let own: Database | undefined
  const { prisma, notes, close } = await openFolder(folder, (fault) => own && reopen(own, fault))
  own = { prisma, folder, server: null, notes, close }
  return own
}

/** A database that cannot go on is closed and opened again; whoever asks meanwhile waits for it, or hears why not. */
function reopen(own: Database, fault: Error): void {
  const current = shared.emberslateDatabase
  say('error', 'database-broke', { kind: fault.name, why: fault.message })
  // One that a command opened for itself is the command's to close.
  if (!current) return
  const again = async () => {
    if ((await current.catch(() => null)) !== own) return current
    // A line that is in a journal and not yet in the database is stored or taken back first.
    await settled()
    await own.close().catch(() => undefined)
    if (own.folder !== null && fault instanceof DatabaseDamaged)
      say('warn', 'database-aside', { words: await setDatabaseAside(own.folder, fault.message) })
    return opened()
  }
  const next = again()
  shared.emberslateDatabase = next
  next.then(
    ({ notes }) => say('warn', 'database-again', { notes: notes.join(' ') }),
    (why) => {
      sayFault('database-not-again', why)
      if (shared.emberslateDatabase === next) shared.emberslateDatabase = undefined
    },
  )
}
