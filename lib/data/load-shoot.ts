import 'server-only'
import type { ShootDocument } from '../plan/shoot'
import { instant } from '../units'
import { database } from './client'
import { nextUndo, type SavedShoot, type Step } from './saved-shoot'

/** The steps of a shoot by version number, without their documents. */
export async function loadSteps(shootId: string): Promise<ReadonlyMap<number, Step>> {
  const { prisma } = await database()
  const rows = await prisma.shootVersion.findMany({ where: { shootId }, select: { version: true, undoOf: true } })
  return new Map(rows.map((row) => [row.version, row]))
}

/** One version of a shoot (the newest if none is named), or nothing if there is no such shoot. */
export async function loadShoot(id: string, version?: number): Promise<SavedShoot | undefined> {
  const { prisma } = await database()
  const row = await prisma.shootVersion.findFirst({
    where: { shootId: id, ...(version === undefined ? {} : { version }) },
    orderBy: { version: 'desc' },
  })
  if (!row) return undefined
  const steps = await loadSteps(id)
  return {
    id,
    version: row.version,
    document: row.document as ShootDocument,
    canUndo: nextUndo(steps, row.version) !== undefined,
    savedAt: instant(row.at.getTime()),
  }
}
