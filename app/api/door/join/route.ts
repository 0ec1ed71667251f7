import { BorderError } from '@/lib/data/border-error'
import { takeCarried } from '@/lib/data/door/carry'
import { countJoin } from '@/lib/data/door/door-limits'
import { linkByCode, liveLinks } from '@/lib/data/door/links'
import { endSession, openLinkSession, openOwnerSession } from '@/lib/data/door/sessions'
import { meet, peerOf } from '@/lib/data/door/visitor'
import { answer, readBody } from '../../border'
import { signedIn } from '../signed-in'

export const dynamic = 'force-dynamic'

/** Lets in who has the code of a link, beside what they may do already, and says where to go. */
export const POST = (request: Request) =>
  answer(async () => {
    const { code } = await readBody(request)
    countJoin(peerOf(request.headers))
    const carried = await takeCarried(code)
    if (carried?.owner) return signedIn(request, await openOwnerSession(), { to: '/' })
    const link = await linkByCode(code)
    const ids = link ? [link.id] : (carried?.links ?? [])
    const now = (await meet(request.headers)).session?.session
    if (link && now?.owner) return Response.json({ to: setOf(link.shoot) })
    const links = await liveLinks([...new Set([...(now?.links ?? []), ...ids])])
    const last = links.find(({ id }) => id === ids.at(-1))
    if (!last) throw new BorderError('wrong-code')
    const ordered = [...links.filter((one) => one !== last), last]
    if (now) await endSession(now.id)
    return signedIn(request, await openLinkSession(ordered), { to: setOf(last.shoot) })
  })

const setOf = (shoot: string) => `/shoots/${shoot}/set`
