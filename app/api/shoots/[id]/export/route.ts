import { BorderError } from '@/lib/data/border-error'
import { loadShoot } from '@/lib/data/load-shoot'
import { answer } from '../../../border'
import { fileNameOf } from '../../../file-name'

export const dynamic = 'force-dynamic'

/** The shoot file as it was written, to keep or to open elsewhere. */
export const GET = (_request: Request, { params }: RouteContext<'/api/shoots/[id]/export'>) =>
  answer(async () => {
    const { id } = await params
    const saved = await loadShoot(id)
    if (!saved) throw new BorderError('not-found')
    return new Response(`${JSON.stringify(saved.document, null, 2)}\n`, {
      headers: {
        'content-type': 'application/json; charset=utf-8',
        'content-disposition': `attachment; filename="${fileNameOf(saved.document)}.json"`,
      },
    })
  })
