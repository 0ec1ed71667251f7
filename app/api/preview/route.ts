import { parseShoot } from '@/lib/plan/parse'
import { previewOf } from '../../shoots/preview-of'
import { chosenUnits } from '../../units'
import { answer, readBody, valueOrRefuse } from '../border'

export const dynamic = 'force-dynamic'

/** The heat line of a plan that is still being typed. Nothing is kept. */
export const POST = (request: Request) =>
  answer(async () => {
    const { document } = await readBody(request)
    return Response.json(previewOf(valueOrRefuse(parseShoot(document)), await chosenUnits()))
  })
