import { BorderError } from '@/lib/data/border-error'
import { forgetCooker } from '@/lib/data/cookers'
import { requireShoot } from '@/lib/data/load-log'
import { answer, readBody } from '../../../../border'

export const dynamic = 'force-dynamic'

/** Forgets what was learnt of a cooker, or takes that back. */
export const POST = (request: Request, { params }: RouteContext<'/api/shoots/[id]/cookers/[cookerId]'>) =>
  answer(async () => {
    const { id, cookerId } = await params
    await requireShoot(id)
    const { forgotten } = await readBody(request)
    if (typeof forgotten !== 'boolean') {
      const sentence = 'Write "forgotten": true to forget this cooker, or false to take that back.'
      throw new BorderError('door-invalid', { problems: [{ pointer: '/forgotten', sentence }], sentence })
    }
    if (!(await forgetCooker(cookerId, forgotten, Date.now()))) {
      const sentence = forgotten ? 'Nothing is remembered of this cooker.' : 'There is nothing to take back here.'
      throw new BorderError('cooker-as-it-was', { sentence })
    }
    return Response.json({ cooker: cookerId, forgotten })
  })
