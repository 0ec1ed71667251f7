import { BorderError } from '@/lib/data/border-error'
import { makeKey } from '@/lib/data/door/device-keys'
import { expiryFor } from '@/lib/data/door/links'
import { loadShoot } from '@/lib/data/load-shoot'
import { answer, readBody } from '../../../border'

export const dynamic = 'force-dynamic'

/** Makes a key with which one device sends readings. Its secret is in this answer and nowhere else. */
export const POST = (request: Request, { params }: { params: Promise<{ id: string }> }) =>
  answer(async () => {
    const { id } = await params
    const { name } = await readBody(request)
    const saved = await loadShoot(id)
    if (!saved) throw new BorderError('not-found')
    const key = await makeKey(id, name, expiryFor(String(saved.document.date)))
    return Response.json(key, { status: 201, headers: { 'cache-control': 'no-store' } })
  })
