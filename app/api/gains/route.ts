import { parseShoot } from '@/lib/plan/parse'
import { gainsBeside } from '../../day-pool'
import { answer, readBody, valueOrRefuse } from '../border'

export const dynamic = 'force-dynamic'

/** What measuring would do for a plan that is still being typed. Nothing is kept. */
export const POST = (request: Request) =>
  answer(async () => {
    const { document } = await readBody(request)
    return Response.json(await gainsBeside(valueOrRefuse(parseShoot(document))))
  })
