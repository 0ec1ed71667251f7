import { BorderError } from '@/lib/data/border-error'
import { roleOf } from '@/lib/data/door/access'
import { linksOf, revokeLink } from '@/lib/data/door/links'
import { endByLink } from '@/lib/data/door/sessions'
import { visitorOf } from '@/lib/data/door/visitor'
import { answer } from '../../../../border'

export const dynamic = 'force-dynamic'

/** Shuts a person out: the code opens nothing, and their phones are out at once. */
export const DELETE = (request: Request, { params }: { params: Promise<{ id: string; linkId: string }> }) =>
  answer(async () => {
    const { id, linkId } = await params
    const link = (await linksOf(id)).find((one) => one.id === linkId)
    if (link?.role === 'producer' && roleOf(await visitorOf(request.headers), id) !== 'owner')
      throw new BorderError('may-not', { sentence: 'Only the owner shuts a producer out.' })
    if (!(await revokeLink(id, linkId))) throw new BorderError('not-found', { sentence: 'There is no such link.' })
    await endByLink(linkId)
    return Response.json({})
  })
