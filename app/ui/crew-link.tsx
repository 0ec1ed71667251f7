import { headers } from 'next/headers'
import Link from 'next/link'
import { mayEdit } from '@/lib/data/door/access'
import { visitorOf } from '@/lib/data/door/visitor'
import { crewMode } from '@/lib/data/env'
import { crewLinks } from '../words/shared'

/** To the codes of a shoot's crew, for those who give them out. */
export async function CrewLink({ id }: { id: string }) {
  if (!crewMode() || !mayEdit(await visitorOf(await headers()), id)) return null
  return (
    <Link className="textlink" href={`/shoots/${id}/crew`}>
      {crewLinks}
    </Link>
  )
}
