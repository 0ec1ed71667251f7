import 'server-only'
import { randomUUID } from 'node:crypto'
import { open, rm } from 'node:fs/promises'
import path from 'node:path'
import { type Database, database } from './client'
import { databaseUrl } from './env'
import { migrationNames } from './migrate'
import { bus } from './server/bus'

/** One thing that must hold before the app can do its work; the sentence is for whoever runs it. */
export interface Check {
  readonly name: string
  readonly ok: boolean
  readonly sentence: string
}
const LONGEST_MS = 1000

/** Rejects where `work` is not done in time; what was begun goes on unheard. */
async function inTime<T>(work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error('late')), LONGEST_MS)
  })
  work.catch(() => undefined)
  return Promise.race([work, late]).finally(() => clearTimeout(timer))
}

/** What holds says `fine`, and what does not says what to do about it; the fault itself may have an address in it. */
async function check(name: string, work: Promise<boolean>, fine: string, amiss: string): Promise<Check> {
  const ok = await inTime(work).catch(() => false)
  return { name, ok, sentence: ok ? fine : amiss }
}

async function answers(opened: Promise<Database>) {
  await (await opened).prisma.$queryRaw`SELECT 1`
  return true
}

/** A newer Emberslate may have added some; none of ours may be missing or broken off. */
async function migrated(opened: Promise<Database>) {
  const { prisma } = await opened
  const rows = await prisma.$queryRaw<{ name: string }[]>`
    SELECT migration_name AS name FROM "_prisma_migrations" WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`
  const applied = new Set(rows.map(({ name }) => name))
  return migrationNames().every((name) => applied.has(name))
}

/** Written and synced as a journal's line is, for a full disk still makes files. */
export async function takesWrite(folder: string): Promise<boolean> {
  const file = path.join(folder, `.asked-${randomUUID()}`)
  try {
    const handle = await open(file, 'w', 0o600)
    try {
      await handle.writeFile('Emberslate asks whether the disk takes a write.\n')
      await handle.datasync()
    } finally {
      await handle.close()
    }
    return true
  } finally {
    await rm(file, { force: true }).catch(() => undefined)
  }
}

const inFolder = (opened: Promise<Database>) =>
  check(
    'disk',
    opened.then(({ folder }) => folder === null || takesWrite(folder)),
    'The data folder takes a write.',
    'The data folder takes no write. Free some room on its disk, or make it writable; then nothing else is needed.',
  )

const hears = () =>
  check(
    'listening',
    Promise.resolve(bus().awayMs() === 0),
    'This process hears what the others tell.',
    'This process does not hear the others at present. It tries again each second; if it stays so, look at PostgreSQL.',
  )

/** Everything in `lib/data` that must hold; without a folder PostgreSQL keeps everything, and must be heard too. */
export function dataChecks(opened: Promise<Database> = database()): Promise<readonly Check[]> {
  const server = databaseUrl() !== null
  const what = server ? 'PostgreSQL' : 'The database'
  return Promise.all([
    check(
      'database',
      answers(opened),
      `${what} answers.`,
      `${what} did not answer within a second. ${server ? 'See whether it runs and takes connections.' : 'npm run doctor says why.'}`,
    ),
    check(
      'migrations',
      migrated(opened),
      'The tables are up to date.',
      'The tables are not up to date, or cannot be asked. Restart Emberslate: it brings them up to date when it starts.',
    ),
    server ? hears() : inFolder(opened),
  ])
}
