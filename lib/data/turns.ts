import 'server-only'
import { database, type Tx } from './client'

/** Queues of this process, whichever of Next's bundles a write comes through. */
const shared = globalThis as { emberslateTurns?: Map<string, Promise<unknown>> }
/** What is locked, by its hash, of a shoot that is written to. */
export const lockOf = (shootId: string) => `shoot ${shootId}`
/** The lock is held by whoever writes to a shoot, in whichever process; work that takes longer than this is given up. */
const TIMES = { maxWait: 10_000, timeout: 60_000 }

/**
 * Writes to a shoot wait for each other: what they go by is read, journaled and stored before the next one reads. In a
 * folder, all writes do. On a server the work is a transaction: what `work` tells is true once this resolves, not before,
 * and it must ask and write by `tx` alone.
 */
export async function inTurn<T>(shootId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  const { prisma, server } = await database()
  // Asked for when the turn comes: the database may have been opened again meanwhile.
  if (!server) return queued('', async () => work((await database()).prisma))
  // Waiting here, and not for the lock, leaves the connections to others.
  return queued(shootId, () =>
    prisma.$transaction(async (tx) => {
      await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${lockOf(shootId)}, 0))`
      return work(tx)
    }, TIMES),
  )
}

/** Work of one name waits for each other in this process. */
export function queued<T>(name: string, work: () => Promise<T>): Promise<T> {
  shared.emberslateTurns ??= new Map()
  const turns = shared.emberslateTurns
  const turn = (turns.get(name) ?? Promise.resolve()).then(work)
  const over: Promise<unknown> = turn
    .catch(() => undefined)
    .then(() => {
      if (turns.get(name) === over) turns.delete(name)
    })
  turns.set(name, over)
  return turn
}
