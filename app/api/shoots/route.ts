import { createShoot } from '@/lib/data/create-shoot'
import { visitorOf } from '@/lib/data/door/visitor'
import { listShoots } from '@/lib/data/list-shoots'
import { answer, readBody, valueOrRefuse, writeIdOf } from '../border'

export const dynamic = 'force-dynamic'

/** Those that the visitor may see. */
export const GET = (request: Request) =>
  answer(async () => Response.json({ shoots: await listShoots(await visitorOf(request.headers)) }))

export const POST = (request: Request) =>
  answer(async () => {
    const body = await readBody(request)
    const saved = valueOrRefuse(await createShoot(body.document, writeIdOf(body)))
    return Response.json(saved, { status: 201, headers: { location: `/api/shoots/${saved.id}` } })
  })
