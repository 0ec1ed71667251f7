import 'server-only'
import type { ShootDocument } from '../../plan/shoot'
import { database } from '../client'

/** So many versions back a calendar still cancels what it once announced. */
const VERSIONS = 200

/** The documents of a shoot's earlier versions, newest first. */
export async function loadFormer(shootId: string, version: number): Promise<readonly ShootDocument[]> {
  const { prisma } = await database()
  const rows = await prisma.shootVersion.findMany({
    where: { shootId, version: { lt: version } },
    orderBy: { version: 'desc' },
    take: VERSIONS,
    select: { document: true },
  })
  return rows.map((row) => row.document as ShootDocument)
}
