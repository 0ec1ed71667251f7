import { undoShoot } from '@/lib/data/undo-shoot'
import { answer, readBody, writeIdOf } from '../../../border'

export const dynamic = 'force-dynamic'

export const POST = (request: Request, { params }: RouteContext<'/api/shoots/[id]/undo'>) =>
  answer(async () => {
    const { id } = await params
    return Response.json(await undoShoot(id, writeIdOf(await readBody(request))))
  })
