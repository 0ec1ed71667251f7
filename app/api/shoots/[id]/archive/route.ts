import { Readable } from 'node:stream'
import { archiveOf } from '@/lib/data/archive/archive-out'
import { BorderError } from '@/lib/data/border-error'
import { loadShoot } from '@/lib/data/load-shoot'
import { answer } from '../../../border'
import { fileNameOf } from '../../../file-name'

export const dynamic = 'force-dynamic'

/** The whole shoot as one file: its versions, log, forecasts of the day and photographs. */
export const GET = (_request: Request, { params }: RouteContext<'/api/shoots/[id]/archive'>) =>
  answer(async () => {
    const { id } = await params
    const saved = await loadShoot(id)
    if (!saved) throw new BorderError('not-found')
    return new Response(Readable.toWeb(Readable.from(archiveOf(id))) as ReadableStream, {
      headers: {
        'content-type': 'application/zip',
        'content-disposition': `attachment; filename="${fileNameOf(saved.document)}-archive.zip"`,
        'cache-control': 'no-store',
      },
    })
  })
