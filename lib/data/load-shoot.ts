import 'server-only'
import type { ShootDocument } from '../plan/shoot'
import { instant } from '../units'
import { database, type Tx } from './client'
import { nextUndo, type SavedShoot, type Step } from './saved-shoot'

/** The steps of a shoot by version number, without their documents. */
export async function loadSteps(shootId: string, tx?: Tx): Promise<ReadonlyMap<number, Step>> {
  const from = tx ?? (await database()).prisma
  const rows = await from.shootVersion.findMany({ where: { shootId }, select: { version: true, undoOf: true } })
  return new Map(rows.map((row) => [row.version, row]))
}

/** The number of its newest version. */
export async function savedVersion(id: string): Promise<number | undefined> {
  const { prisma } = await database()
  return (await prisma.shoot.findUnique({ where: { id }, select: { version: true } }))?.version
}

/** One version of a shoot (the newest if none is named), or nothing if there is no such shoot; in a turn, by its `tx`. */
export async function loadShoot(id: string, version?: number, tx?: Tx): Promise<SavedShoot | undefined> {
  const from = tx ?? (await database()).prisma
  const row = await from.shootVersion.findFirst({
    where: { shootId: id, ...(version === undefined ? {} : { version }) },
    orderBy: { version: 'desc' },
  })
  if (!row) return undefined
  const steps = await loadSteps(id, tx)
  return {
    id,
    version: row.version,
    document: row.document as ShootDocument,
    canUndo: nextUndo(steps, row.version) !== undefined,
    savedAt: instant(row.at.getTime()),
  }
}
