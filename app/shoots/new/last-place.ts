import 'server-only'
import { headers } from 'next/headers'
import { visitorOf } from '@/lib/data/door/visitor'
import { listShoots } from '@/lib/data/list-shoots'
import { loadShoot } from '@/lib/data/load-shoot'
import { DEMO_ID } from '@/lib/data/plant-demo'
import { NOWHERE_YET, type Whereabouts } from '@/lib/plan/samples'

/** Who films again films where they filmed last, more often than not. */
export async function lastPlace(): Promise<Whereabouts> {
  const own = (await listShoots(await visitorOf(await headers()))).filter(({ id }) => id !== DEMO_ID)
  const last = own.reduce<(typeof own)[number] | null>(
    (latest, one) => (latest && latest.changedAt >= one.changedAt ? latest : one),
    null,
  )
  const saved = last && (await loadShoot(last.id))
  const { zone, place } = (saved?.document ?? {}) as Partial<Whereabouts>
  return zone && place ? { zone, place } : NOWHERE_YET
}
