import { readPhoto } from '@/lib/data/photos'
import { typeOfName } from '@/lib/log/photo-name'
import { answer } from '../../../../border'

export const dynamic = 'force-dynamic'

/** A photograph never changes under its name. */
export const GET = (_request: Request, { params }: { params: Promise<{ id: string; name: string }> }) =>
  answer(async () => {
    const { id, name } = await params
    const bytes = await readPhoto(id, name)
    return new Response(new Uint8Array(bytes), {
      headers: {
        'content-type': typeOfName(name),
        'cache-control': 'private, max-age=31536000, immutable',
        'x-content-type-options': 'nosniff',
      },
    })
  })
