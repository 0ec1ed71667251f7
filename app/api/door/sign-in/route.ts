import { BorderError } from '@/lib/data/border-error'
import { countSignIn } from '@/lib/data/door/door-limits'
import { isOwners } from '@/lib/data/door/owner'
import { openOwnerSession } from '@/lib/data/door/sessions'
import { isAtThisComputer, peerOf } from '@/lib/data/door/visitor'
import { answer, readBody } from '../../border'
import { signedIn } from '../signed-in'

export const dynamic = 'force-dynamic'

export const POST = (request: Request) =>
  answer(async () => {
    const { passphrase } = await readBody(request)
    countSignIn(peerOf(request.headers), isAtThisComputer(request.headers))
    if (!(await isOwners(passphrase))) throw new BorderError('wrong-passphrase', { pointer: '/passphrase' })
    return signedIn(request, await openOwnerSession())
  })
