import { parseShoot } from '@/lib/plan/parse'
import { readersWay } from '../../locale'
import { previewOf } from '../../shoots/preview-of'
import { chosenUnits } from '../../units'
import { forecastsReady } from '../../workbench'
import { answer, readBody, valueOrRefuse } from '../border'

export const dynamic = 'force-dynamic'

/** The heat line of a plan that is still being typed. Nothing is kept. */
export const POST = (request: Request) =>
  answer(async () => {
    const { document } = await readBody(request)
    const shoot = valueOrRefuse(parseShoot(document))
    await forecastsReady(shoot)
    return Response.json(previewOf(shoot, await chosenUnits(), await readersWay()))
  })
