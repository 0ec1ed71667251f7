import { listShoots } from '@/lib/data/list-shoots'
import { visitorOf } from '@/lib/data/visitor'
import { MODEL_VERSION } from '@/lib/model/version'
import { answer } from '../border'

export const dynamic = 'force-dynamic'

export const GET = (request: Request) =>
  answer(async () => {
    const shoots = await listShoots(await visitorOf(request.headers))
    return Response.json({ ok: true, modelVersion: MODEL_VERSION, shoots: shoots.length })
  })
