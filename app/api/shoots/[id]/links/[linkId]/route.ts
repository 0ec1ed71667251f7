import { BorderError } from '@/lib/data/border-error'
import { revokeLink } from '@/lib/data/links'
import { endByLink } from '@/lib/data/sessions'
import { answer } from '../../../../border'

export const dynamic = 'force-dynamic'

/** Shuts a person out: the code opens nothing, and their phones are out at once. */
export const DELETE = (_request: Request, { params }: { params: Promise<{ id: string; linkId: string }> }) =>
  answer(async () => {
    const { id, linkId } = await params
    if (!(await revokeLink(id, linkId))) throw new BorderError('not-found', { sentence: 'There is no such link.' })
    await endByLink(linkId)
    return Response.json({})
  })
