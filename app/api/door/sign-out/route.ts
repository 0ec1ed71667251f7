import { endSession } from '@/lib/data/door/sessions'
import { visitorOf } from '@/lib/data/door/visitor'
import { answer } from '../../border'
import { signedIn } from '../signed-in'

export const dynamic = 'force-dynamic'

/** Ends this browser's session; its link still opens another one. */
export const POST = (request: Request) =>
  answer(async () => {
    const { by, device } = await visitorOf(request.headers)
    if (by !== null && device === null) await endSession(by)
    return signedIn(request, null)
  })
