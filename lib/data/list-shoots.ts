import 'server-only'
import { type Instant, instant } from '../units'
import { database } from './client'
import { maySee, type Visitor } from './door/access'

/** A line in the list of shoots; `date` is the day of the shoot, "2027-05-15". */
export type ListedShoot = {
  readonly id: string
  readonly title: string
  readonly date: string
  readonly version: number
  readonly changedAt: Instant
}

/** Every shoot that the visitor may see, the last changed first. */
export async function listShoots(visitor: Visitor): Promise<readonly ListedShoot[]> {
  const { prisma } = await database()
  const rows = await prisma.shoot.findMany({ orderBy: [{ updatedAt: 'desc' }, { id: 'asc' }] })
  return rows
    .filter(({ id }) => maySee(visitor, id))
    .map(({ id, title, date, version, updatedAt }) => ({
      id,
      title,
      date,
      version,
      changedAt: instant(updatedAt.getTime()),
    }))
}
