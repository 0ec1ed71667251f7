import { forecastCook } from '@/lib/model/forecast-cook'
import { summarise } from '@/lib/model/summary'
import { MODEL_VERSION } from '@/lib/model/version'
import { toCookPlan } from '@/lib/plan/cook-plan'
import { parseShoot } from '@/lib/plan/parse'
import { answer, readBody, valueOrRefuse } from '../border'

export const dynamic = 'force-dynamic'

/** What the command line prints for the same shoot file. Nothing is saved. */
export const POST = (request: Request) =>
  answer(async () => {
    const shoot = valueOrRefuse(parseShoot((await readBody(request)).document))
    const seed = shoot.seed ?? 1
    const cooks = shoot.cooks.map((cook, i) =>
      summarise(forecastCook(toCookPlan(shoot, cook), { seed }), `/cooks/${i}`),
    )
    return Response.json({ modelVersion: MODEL_VERSION, kernel: 'plain', seed, cooks })
  })
