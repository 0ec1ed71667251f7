import 'server-only'
import { BorderError } from './border-error'
import { database } from './client'
import type { KeptLine } from './folder/log-journal'
import { toLine } from './folder/put-back-log'

/** The lines of a shoot's log after a position (0: all), in the order in which they came in; at most `most`. */
export async function loadLog(shootId: string, since: number, most?: number): Promise<readonly KeptLine[]> {
  const { prisma } = await database()
  const rows = await prisma.logLine.findMany({
    where: { shootId, position: { gt: since } },
    orderBy: { position: 'asc' },
    take: most,
  })
  return rows.map(toLine)
}

/** The position of the line that came in last; 0 before the first. */
export async function lastPosition(shootId: string): Promise<number> {
  const { prisma } = await database()
  const last = await prisma.logLine.findFirst({
    where: { shootId },
    orderBy: { position: 'desc' },
    select: { position: true },
  })
  return last?.position ?? 0
}

/** The lines of these kinds alone: a day's readings are many. */
export async function loadKinds(shootId: string, kinds: readonly string[]): Promise<readonly KeptLine[]> {
  const { prisma } = await database()
  const rows = await prisma.logLine.findMany({
    where: { shootId, OR: kinds.map((kind) => ({ document: { path: ['kind'], equals: kind } })) },
    orderBy: { position: 'asc' },
  })
  return rows.map(toLine)
}

/** Refuses a shoot that is not here. */
export async function requireShoot(shootId: string): Promise<void> {
  const { prisma } = await database()
  if ((await prisma.shoot.count({ where: { id: shootId } })) === 0) throw new BorderError('not-found')
}
