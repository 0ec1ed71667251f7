import 'server-only'
import { database } from '../client'

/** By how its write id begins a version says that somebody was erased, and when; whom, it does not say. */
export const ERASURE = 'erasure-'

/** The version by which somebody was last taken out of a shoot; 0 where nobody was. */
export async function lastErasure(shootId: string): Promise<number> {
  const { prisma } = await database()
  const row = await prisma.shootVersion.findFirst({
    where: { shootId, writeId: { startsWith: ERASURE } },
    orderBy: { version: 'desc' },
    select: { version: true },
  })
  return row?.version ?? 0
}
