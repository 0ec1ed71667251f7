import { headers } from 'next/headers'
import { mayEdit } from '@/lib/data/door/access'
import { visitorOf } from '@/lib/data/door/visitor'
import { archive } from '../words/shared'

/** The whole shoot as one file, for those who may have it. */
export async function ArchiveLink({ id }: { id: string }) {
  if (!mayEdit(await visitorOf(await headers()), id)) return null
  return (
    <a className="textlink" href={`/api/shoots/${id}/archive`} download>
      {archive}
    </a>
  )
}
