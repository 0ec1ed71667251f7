import { createShoot } from '@/lib/data/create-shoot'
import { listShoots } from '@/lib/data/list-shoots'
import { answer, readBody, valueOrRefuse, writeIdOf } from '../border'

export const dynamic = 'force-dynamic'

export const GET = () => answer(async () => Response.json({ shoots: await listShoots() }))

export const POST = (request: Request) =>
  answer(async () => {
    const body = await readBody(request)
    const saved = valueOrRefuse(await createShoot(body.document, writeIdOf(body)))
    return Response.json(saved, { status: 201, headers: { location: `/api/shoots/${saved.id}` } })
  })
