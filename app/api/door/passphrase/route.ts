import { BorderError } from '@/lib/data/border-error'
import { countSignIn } from '@/lib/data/door/door-limits'
import { chooseAnother, chooseFirst, isOwners, ownerIsKnown } from '@/lib/data/door/owner'
import { endOwnerSessions, openOwnerSession } from '@/lib/data/door/sessions'
import { isAtThisComputer, peerOf, visitorOf } from '@/lib/data/door/visitor'
import { crewMode } from '@/lib/data/env'
import { answer, readBody } from '../../border'
import { signedIn } from '../signed-in'

export const dynamic = 'force-dynamic'

/** Keeps the owner's passphrase: the first one at this computer only, another one with the one that holds. */
export const POST = (request: Request) =>
  answer(async () => {
    if (!crewMode()) throw new BorderError('may-not', { sentence: 'Start with --crew to choose a passphrase.' })
    const { passphrase, former } = await readBody(request)
    const { headers } = request
    countSignIn(peerOf(headers), isAtThisComputer(headers))
    if (await ownerIsKnown()) {
      if (!(await visitorOf(headers)).owner) throw new BorderError('may-not')
      if (!(await isOwners(former))) throw new BorderError('wrong-passphrase', { pointer: '/former' })
      await chooseAnother(passphrase)
      await endOwnerSessions()
    } else {
      if (!isAtThisComputer(headers)) throw new BorderError('not-at-this-computer')
      await chooseFirst(passphrase)
    }
    return signedIn(request, await openOwnerSession())
  })
