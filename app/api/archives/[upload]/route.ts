import { addPiece, LARGEST_PIECE } from '@/lib/data/archive/archive-upload'
import { BorderError } from '@/lib/data/border-error'
import { answer } from '../../border'
import { readBytes } from '../../read-bytes'

export const dynamic = 'force-dynamic'

const TOO_LARGE = `A piece of an archive has at most ${LARGEST_PIECE / 1e6} MB. Send it in smaller ones.`
const WHERE = 'Say with "?from=" how many bytes of the archive come before this piece.'

/** Adds a piece of an archive, the body as it is. Sent twice it is there once. */
export const PUT = (request: Request, { params }: RouteContext<'/api/archives/[upload]'>) =>
  answer(async () => {
    const { upload } = await params
    const from = Number(new URL(request.url).searchParams.get('from') ?? Number.NaN)
    if (!Number.isSafeInteger(from) || from < 0)
      throw new BorderError('archive-invalid', { sentence: WHERE, problems: [{ pointer: '/from', sentence: WHERE }] })
    const piece = await readBytes(request, LARGEST_PIECE, () => new BorderError('too-large', { sentence: TOO_LARGE }))
    return Response.json({ here: await addPiece(upload, from, piece) })
  })
