import 'server-only'
import { eraseFromEntry } from '../../log/erase-from-log'
import { type Erasure, eraseFromShoot, erasureOf } from '../../plan/erase-person'
import type { ShootDocument } from '../../plan/shoot'
import type { Tx } from '../client'
import type { KeptLine } from '../folder/log-journal'
import { changeForecasts } from '../forecast-journal'
import type { Prisma } from '../generated/client'
import { forgetTold } from '../last-told'
import { notify } from '../server/bus'
import { sqlOf } from '../server/server-sql'
import { inTurn } from '../turns'
import { keepVersion } from '../write-version'
import { eraseTold } from './erase-told'
import type { Erasing } from './erasing'

/** Versions, log and forecasts in one transaction, in the shoot's turn; whoever listens hears of a new version. */
export async function eraseOnServer({ shoot: shootId, writeId, plan }: Erasing): Promise<void> {
  const erasure = erasureOf(plan)
  await inTurn(shootId, async (tx) => {
    const versions = await tx.shootVersion.findMany({ where: { shootId }, orderBy: { version: 'asc' } })
    for (const { version, document } of versions) {
      const erased = eraseFromShoot(document as ShootDocument, erasure)
      if (erased.changes.length === 0) continue
      const where = { shootId_version: { shootId, version } }
      await tx.shootVersion.update({ where, data: { document: erased.document as Prisma.InputJsonObject } })
    }
    await eraseLog(tx, shootId, erasure)
    await changeForecasts(shootId, (line) => eraseTold(line, erasure), sqlOf(tx))
    await forgetTold(shootId, tx)
    await notify({ on: 'erased', shoot: shootId }, tx)
    const newest = versions.at(-1)
    if (newest && !versions.some((one) => one.writeId === writeId)) {
      const { document } = eraseFromShoot(newest.document as ShootDocument, erasure)
      await keepVersion(tx, { shootId, version: newest.version + 1, writeId, document })
    }
  })
}

const AT_ONCE = 5000
async function eraseLog(tx: Tx, shootId: string, erasure: Erasure): Promise<void> {
  for (let after = 0; ; ) {
    const lines = await tx.logLine.findMany({
      where: { shootId, position: { gt: after } },
      orderBy: { position: 'asc' },
      take: AT_ONCE,
      select: { position: true, document: true },
    })
    for (const { position, document } of lines) {
      const erased = eraseFromEntry(document as KeptLine['document'], erasure)
      if (erased.changes.length === 0) continue
      const where = { shootId_position: { shootId, position } }
      await tx.logLine.update({ where, data: { document: erased.document as Prisma.InputJsonObject } })
    }
    after = lines.at(-1)?.position ?? after
    if (lines.length < AT_ONCE) return
  }
}
