import { carryCode } from '@/lib/data/door/carry'
import { meet } from '@/lib/data/door/visitor'
import { answer } from '../../border'

export const dynamic = 'force-dynamic'

/** A code for once that opens the same over the trusted line. */
export const POST = (request: Request) =>
  answer(async () => {
    const { session } = await meet(request.headers)
    const code = session ? await carryCode(session.session) : null
    return Response.json({ code }, { headers: { 'cache-control': 'no-store' } })
  })
