import { parseShoot } from '@/lib/plan/parse'
import { cutFaceAt } from '../../shoots/cut-face-at'
import { chosenUnits } from '../../units'
import { answer, readBody, valueOrRefuse } from '../border'

export const dynamic = 'force-dynamic'

/** The slice of the same cook at another heat, beside the plan's. Nothing is kept. */
export const POST = (request: Request) =>
  answer(async () => {
    const { document, at } = await readBody(request)
    return Response.json(await cutFaceAt(valueOrRefuse(parseShoot(document)), at, await chosenUnits()))
  })
