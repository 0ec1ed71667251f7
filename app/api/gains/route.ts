import { parseShoot } from '@/lib/plan/parse'
import { gainsOf } from '../../shoots/gains-of'
import { answer, readBody, valueOrRefuse } from '../border'

export const dynamic = 'force-dynamic'

/** What measuring would do for a plan that is still being typed. Nothing is kept. */
export const POST = (request: Request) =>
  answer(async () => {
    const { document } = await readBody(request)
    return Response.json(gainsOf(valueOrRefuse(parseShoot(document))))
  })
