import { parseShoot } from '@/lib/plan/parse'
import type { ShootDocument } from '@/lib/plan/shoot'
import { whatIfOf } from '../../shoots/what-if-of'
import { answer, readBody, valueOrRefuse } from '../border'

export const dynamic = 'force-dynamic'

/** A late crew, other weather or a hold, cooked and laid out anew beside the plan. Nothing is kept. */
export const POST = (request: Request) =>
  answer(async () => {
    const { document, change } = await readBody(request)
    const shoot = valueOrRefuse(parseShoot(document))
    return Response.json(await whatIfOf(document as ShootDocument, shoot, change))
  })
