import { listShoots } from '@/lib/data/list-shoots'
import { MODEL_VERSION } from '@/lib/model/version'
import { answer } from '../border'

export const dynamic = 'force-dynamic'

export const GET = () =>
  answer(async () => {
    const shoots = await listShoots()
    return Response.json({ ok: true, modelVersion: MODEL_VERSION, shoots: shoots.length })
  })
