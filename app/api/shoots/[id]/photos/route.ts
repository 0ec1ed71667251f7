import { BorderError } from '@/lib/data/border-error'
import { keepPhoto } from '@/lib/data/photos'
import { LARGEST_PHOTO_BYTES } from '@/lib/log/photo-name'
import { answer } from '../../../border'
import { readBytes } from '../../../read-bytes'

export const dynamic = 'force-dynamic'

const TOO_LARGE = 'This photograph is larger than 1.5 MB. Send it at most 1600 pixels wide and high, as JPEG or WebP.'

/** Keeps a photograph of the set, the body as it is. The same one sent twice is kept once. */
export const POST = (request: Request, { params }: { params: Promise<{ id: string }> }) =>
  answer(async () => {
    const { id } = await params
    const bytes = await readBytes(
      request,
      LARGEST_PHOTO_BYTES,
      () => new BorderError('too-large', { sentence: TOO_LARGE }),
    )
    const kept = await keepPhoto(id, bytes)
    return Response.json(kept, { status: kept.became === 'kept' ? 201 : 200, headers: { 'cache-control': 'no-store' } })
  })
