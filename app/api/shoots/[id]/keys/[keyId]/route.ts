import { BorderError } from '@/lib/data/border-error'
import { revokeKey } from '@/lib/data/door/device-keys'
import { answer } from '../../../../border'

export const dynamic = 'force-dynamic'

export const DELETE = (_request: Request, { params }: { params: Promise<{ id: string; keyId: string }> }) =>
  answer(async () => {
    const { id, keyId } = await params
    if (!(await revokeKey(id, keyId))) throw new BorderError('not-found', { sentence: 'There is no such key.' })
    return Response.json({})
  })
