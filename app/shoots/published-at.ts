import 'server-only'
import { headers } from 'next/headers'
import { doorAddresses } from '@/lib/data/door/door-addresses'
import { isSecure } from '@/lib/data/door/visitor'
import { behindProxy, crewMode } from '@/lib/data/env'
import type { Published } from '@/lib/export/published'
import type { Shoot } from '@/lib/plan/shoot'

/** Where this server shows the card to readers. */
const readerPath = (shootId: string) => `/cards/${shootId}`

/** What the author wrote of it; without a page of their own, this server's, where anybody may read it and others can reach it. */
export async function publishedOf(shootId: string, { publish = {} }: Shoot): Promise<Published> {
  return { ...publish, at: publish.page ?? (publish.open ? await addressHere(shootId) : null) }
}

async function addressHere(shootId: string): Promise<string | null> {
  if (!crewMode() && !behindProxy()) return null
  const from = await headers()
  const [first] = doorAddresses(from.get('host') ?? '', isSecure(from))
  return first ? `${first.origin}${readerPath(shootId)}` : null
}
