import 'server-only'
import { access, constants, mkdir, rename } from 'node:fs/promises'
import path from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { PGlite } from '@electric-sql/pglite'
import { PrismaPGlite } from 'pglite-prisma-adapter'
import { PrismaClient } from '../generated/client'
import { abandon, DatabasePanic, heedFaults } from '../heed-faults'
import { applyMigrations, NewerDatabase } from '../migrate'
import { rememberFolder, requireRoom } from './disk-room'
import { isRefusal, whyRefused } from './disk-words'
import { lockFolder } from './lock'
import { putBack } from './put-back'
import { putBackLogs } from './put-back-log'
import { keepTrimmed } from './trim-wal'

const DATABASE = 'pg'
/** A database that does not close in this time is left. */
const CLOSE_MS = 5000

/** The embedded database of a folder, brought up to date and with all that the journals have. */
export interface OpenFolder {
  readonly prisma: PrismaClient
  readonly notes: readonly string[]
  close(): Promise<void>
}

/** `broken` is told once when the database cannot go on; it must be closed and opened again then. */
export async function openFolder(folder: string, broken: (fault: Error) => void): Promise<OpenFolder> {
  await makeWritable(folder)
  const unlock = await lockFolder(folder)
  try {
    await rememberFolder(folder)
    const { prisma, close, notes } = await openOrRebuild(folder, broken)
    return { prisma, notes, close: () => close().finally(unlock) }
  } catch (fault) {
    unlock()
    throw fault
  }
}

async function makeWritable(folder: string) {
  try {
    await mkdir(folder, { recursive: true })
    await access(folder, constants.R_OK | constants.W_OK | constants.X_OK)
  } catch (fault) {
    const why = isRefusal(fault) ? ` (${whyRefused(fault)})` : ''
    throw new Error(`The folder ${folder} cannot be written${why}. Set EMBERSLATE_DATA to a folder that can.`)
  }
  await requireRoom(folder, notOpened(folder))
}

const notOpened = (folder: string) => `The database in ${folder} was not opened`

/** The files of the database are at fault: another one takes their place. */
class UnfitDatabase extends Error {}
const inWords = (fault: unknown) => (fault instanceof Error ? (fault.message.split('\n')[0] as string) : String(fault))

async function openOrRebuild(folder: string, broken: (fault: Error) => void): Promise<OpenFolder> {
  const open = () => openAndMend(folder, broken)
  return open().catch(async (fault) => {
    // What is no fault of the database's own would meet the next one too.
    if (!(fault instanceof UnfitDatabase)) throw fault
    await requireRoom(folder, notOpened(folder))
    const note = await setDatabaseAside(folder, fault.message)
    const { prisma, close, notes } = await open()
    return { prisma, close, notes: [note, ...notes] }
  })
}

/** The journals have all that was acknowledged; the old files stay for whoever wants to look. */
export async function setDatabaseAside(folder: string, why: string): Promise<string> {
  const aside = `${DATABASE}-unreadable-${new Date().toISOString().replace(/[:.]/g, '-')}`
  await rename(path.join(folder, DATABASE), path.join(folder, aside))
  return `The database did not open (${why}). It was moved aside to ${aside} and rebuilt from the journals. All that was saved is in them; delete ${aside} to have its room back.`
}

async function openAndMend(folder: string, broken: (fault: Error) => void): Promise<OpenFolder> {
  let damage: Error | undefined
  let isOpen = false
  const { prisma, close } = await openAt(path.join(folder, DATABASE), (fault) => {
    damage = fault
    if (isOpen) broken(fault)
  })
  try {
    const notes = [...(await putBack(prisma, folder)), ...(await putBackLogs(prisma, folder))]
    isOpen = true
    return { prisma, notes, close }
  } catch (fault) {
    await close()
    throw damage ? new UnfitDatabase(damage.message) : fault
  }
}

async function openAt(place: string, broken: (fault: Error) => void) {
  const pglite = await PGlite.create(place).catch((fault) => {
    throw new UnfitDatabase(inWords(fault))
  })
  let panic = false
  heedFaults(pglite, (fault) => {
    panic = fault instanceof DatabasePanic
    broken(fault)
  })
  const stopTrimming = keepTrimmed(path.dirname(place), pglite)
  const end = async () => {
    stopTrimming()
    if (panic) return abandon(pglite)
    await Promise.race([pglite.close(), setTimeout(CLOSE_MS, undefined, { ref: false })]).catch(() => abandon(pglite))
  }
  try {
    const db = {
      run: (script: string) => pglite.exec(script),
      rows: async (statement: string, values: readonly unknown[] = []) =>
        (await pglite.query<Record<string, unknown>>(statement, [...values])).rows,
    }
    await applyMigrations(db, `The database in ${path.dirname(place)}`)
    const prisma = new PrismaClient({ adapter: new PrismaPGlite(pglite) })
    await prisma.shoot.count()
    return { prisma, close: () => prisma.$disconnect().then(end) }
  } catch (fault) {
    await end()
    throw fault instanceof NewerDatabase ? fault : new UnfitDatabase(inWords(fault))
  }
}
