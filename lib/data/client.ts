import 'server-only'
import { access, constants, mkdir, rename } from 'node:fs/promises'
import path from 'node:path'
import { PGlite } from '@electric-sql/pglite'
import type { Pool } from 'pg'
import { PrismaPGlite } from 'pglite-prisma-adapter'
import { databaseUrl, dataFolder } from './env'
import { type Prisma, PrismaClient } from './generated/client'
import { lockFolder } from './lock'
import { applyMigrations, NewerDatabase } from './migrate'
import { openServer } from './open-server'
import { putBack } from './put-back'
import { putBackLogs } from './put-back-log'

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

const DATABASE = 'pg'
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
  await makeWritable(folder)
  const unlock = await lockFolder(folder)
  const { pglite, prisma, notes } = await openOrRebuild(folder)
  const mended = [...(await putBack(prisma, folder)), ...(await putBackLogs(prisma, folder))]
  const close = async () => {
    await prisma.$disconnect()
    await pglite.close()
    unlock()
  }
  return { prisma, folder, server: null, notes: [...notes, ...mended], close }
}

async function makeWritable(folder: string) {
  try {
    await mkdir(folder, { recursive: true })
    await access(folder, constants.R_OK | constants.W_OK | constants.X_OK)
  } catch {
    throw new Error(`The folder ${folder} cannot be written. Set EMBERSLATE_DATA to a folder that can.`)
  }
}

async function openOrRebuild(folder: string) {
  try {
    return { ...(await openAt(path.join(folder, DATABASE))), notes: [] }
  } catch (fault) {
    if (fault instanceof NewerDatabase) throw fault
    const aside = `${DATABASE}-unreadable-${new Date().toISOString().replace(/[:.]/g, '-')}`
    await rename(path.join(folder, DATABASE), path.join(folder, aside))
    const why = fault instanceof Error ? fault.message.split('\n')[0] : String(fault)
    const note = `The database did not open (${why}). It was moved aside to ${aside} and rebuilt from the journals.`
    return { ...(await openAt(path.join(folder, DATABASE))), notes: [note] }
  }
}

async function openAt(folder: string) {
  const pglite = await PGlite.create(folder)
  try {
    const db = {
      run: (script: string) => pglite.exec(script),
      rows: async (statement: string, values: readonly unknown[] = []) =>
        (await pglite.query<Record<string, unknown>>(statement, [...values])).rows,
    }
    await applyMigrations(db, `The database in ${folder}`)
    const prisma = new PrismaClient({ adapter: new PrismaPGlite(pglite) })
    await prisma.shoot.count()
    return { pglite, prisma }
  } catch (fault) {
    await pglite.close().catch(() => undefined)
    throw fault
  }
}
