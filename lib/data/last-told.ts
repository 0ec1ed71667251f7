import 'server-only'
import { database, type Tx } from './client'
import { type AppliedForecast, keepForecast, lastForecast } from './forecast-journal'
import type { Prisma } from './generated/client'
import { notify } from './server/bus'

/** The row in which a server keeps it. */
const toldRow = (shootId: string) => `told/${shootId}`

/**
 * Keeps a forecast that was applied, then lets the other processes know. They tell their phones the same one, curves and
 * all; the journal is without those, so a server keeps the last one whole.
 */
export async function keepTold(shootId: string, step: AppliedForecast): Promise<void> {
  await keepForecast(shootId, step)
  const { prisma, server } = await database()
  if (!server) return
  const name = toldRow(shootId)
  const content = step as unknown as Prisma.InputJsonObject
  const kept = { content, revision: { increment: 1 } }
  await prisma.smallFile.upsert({ where: { name }, create: { name, content, revision: 1 }, update: kept })
  await notify({ on: 'forecast', shoot: shootId })
}

/** The forecast told last by any process; with its curves where a server keeps them. */
export async function lastTold(shootId: string): Promise<AppliedForecast | null> {
  const { prisma, server } = await database()
  if (!server) return lastForecast(shootId)
  const row = await prisma.smallFile.findUnique({ where: { name: toldRow(shootId) } })
  return (row?.content as unknown as AppliedForecast | undefined) ?? lastForecast(shootId)
}

/** There are names in it; the next forecast is kept whole again. */
export async function forgetTold(shootId: string, tx: Tx): Promise<void> {
  await tx.smallFile.deleteMany({ where: { name: toldRow(shootId) } })
}
