import { BorderError } from '@/lib/data/border-error'
import { exportPerson } from '@/lib/data/person/export-person'
import { findPerson, recordsOf } from '@/lib/data/person/person-records'
import { answer } from '../../../../border'
import { fileNameOf } from '../../../../file-name'

export const dynamic = 'force-dynamic'

/** Everything that is kept of one person in this shoot; the same as npm run person -- export. */
export const GET = (_request: Request, { params }: RouteContext<'/api/shoots/[id]/people/[personId]'>) =>
  answer(async () => {
    const { id, personId } = await params
    const records = await recordsOf(id)
    if (records.versions.length === 0) throw new BorderError('not-found')
    const found = await findPerson(records, [personId], true)
    if (!found) throw new BorderError('not-found', { sentence: 'This shoot never had such a person.' })
    const told = { emberslatePerson: 1, shoots: [await exportPerson(records, found)] }
    const name = `${fileNameOf(records.versions.at(-1)?.document ?? {})}-person`
    return new Response(`${JSON.stringify(told, null, 2)}\n`, {
      headers: {
        'content-type': 'application/json; charset=utf-8',
        'content-disposition': `attachment; filename="${name}.json"`,
        'cache-control': 'no-store',
      },
    })
  })
