import { BorderError } from '@/lib/data/border-error'
import { setAuthority } from '@/lib/data/door/set-authority'
import { answer } from '../../api/border'

export const dynamic = 'force-dynamic'

/** The certificate that phones install once. It is no secret. */
export const GET = () =>
  answer(async () => {
    const authority = await setAuthority()
    if (!authority)
      throw new BorderError('not-found', { sentence: 'There is no trusted line here: start with --crew.' })
    return new Response(new Uint8Array(authority.der), {
      headers: {
        'content-type': 'application/x-x509-ca-cert',
        'content-disposition': 'attachment; filename="emberslate-set.crt"',
      },
    })
  })
