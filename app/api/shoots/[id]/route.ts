import { BorderError } from '@/lib/data/border-error'
import { loadShoot } from '@/lib/data/load-shoot'
import { saveShoot } from '@/lib/data/save-shoot'
import { answer, baseVersionOf, readBody, valueOrRefuse, writeIdOf } from '../../border'

export const dynamic = 'force-dynamic'

export const GET = (_request: Request, { params }: RouteContext<'/api/shoots/[id]'>) =>
  answer(async () => {
    const saved = await loadShoot((await params).id)
    if (!saved) throw new BorderError('not-found')
    return Response.json(saved)
  })

export const PUT = (request: Request, { params }: RouteContext<'/api/shoots/[id]'>) =>
  answer(async () => {
    const { id } = await params
    const body = await readBody(request)
    return Response.json(valueOrRefuse(await saveShoot(id, body.document, writeIdOf(body), baseVersionOf(body))))
  })
