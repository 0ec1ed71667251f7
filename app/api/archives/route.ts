import { takeArchive } from '@/lib/data/archive/archive-in'
import { answer, readBody } from '../border'

export const dynamic = 'force-dynamic'

/** Takes an archive in whose pieces are here: { upload, copy }. A copy stands beside the shoot that is here already. */
export const POST = (request: Request) =>
  answer(async () => {
    const { upload, copy } = await readBody(request)
    const taken = await takeArchive(typeof upload === 'string' ? upload : '', copy === true)
    return Response.json(taken, { status: taken.became === 'kept' ? 201 : 200 })
  })
