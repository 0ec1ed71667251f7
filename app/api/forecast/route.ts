import { forecastDocument } from '@/lib/plan/forecast-document'
import { parseShoot } from '@/lib/plan/parse'
import { documentBeside } from '../../forecast-pool'
import { answer, readBody, valueOrRefuse } from '../border'

export const dynamic = 'force-dynamic'

/** What the command line prints for the same shoot file. Nothing is saved. */
export const POST = (request: Request) =>
  answer(async () => {
    const shoot = valueOrRefuse(parseShoot((await readBody(request)).document))
    return Response.json((await documentBeside(shoot)) ?? forecastDocument(shoot))
  })
