import { BorderError } from '@/lib/data/border-error'
import { roleOf } from '@/lib/data/door/access'
import { calendarPath } from '@/lib/data/door/calendar-keys'
import { doorAddresses } from '@/lib/data/door/door-addresses'
import { expiryFor, LINK_ROLES, type LinkRole, linksOf, makeLink } from '@/lib/data/door/links'
import { isSecure, visitorOf } from '@/lib/data/door/visitor'
import { loadShoot } from '@/lib/data/load-shoot'
import { qrOf } from '@/lib/export/qr'
import { answer, readBody } from '../../../border'

export const dynamic = 'force-dynamic'

/** Makes or renews the link of one person. Its code is in this answer and nowhere else. */
export const POST = (request: Request, { params }: { params: Promise<{ id: string }> }) =>
  answer(async () => {
    const { id } = await params
    const { person, role, origin } = await readBody(request)
    const saved = await loadShoot(id)
    if (!saved) throw new BorderError('not-found')
    const isOwner = roleOf(await visitorOf(request.headers), id) === 'owner'
    const who = personIn(saved.document.people, person)
    const former = (await linksOf(id)).find((link) => link.person === who)
    if (former?.role === 'producer' && !isOwner) refuse('/person', 'Only the owner changes the link of a producer.')
    const wanted = {
      shoot: id,
      person: who,
      role: roleFor(role, isOwner),
      expires: expiryFor(String(saved.document.date)),
    }
    const at = originFor(request, origin)
    const { link, code } = await makeLink(wanted)
    const url = `${at}/join#${code}`
    const shown = { id: link.id, person: link.person, role: link.role, expires: link.expires }
    const calendar = at + (await calendarPath(link))
    return Response.json({ link: shown, url, calendar, qr: qrOf(url) }, { headers: { 'cache-control': 'no-store' } })
  })

function refuse(pointer: string, sentence: string): never {
  throw new BorderError('door-invalid', { problems: [{ pointer, sentence }], sentence })
}

function personIn(people: unknown, person: unknown): string {
  const ids = Array.isArray(people) ? people.map((one: { id?: unknown }) => one.id) : []
  if (typeof person === 'string' && ids.includes(person)) return person
  return refuse(
    '/person',
    `Nobody in this shoot has this id. Write one of ${ids.join(', ') || 'none: add people first'}.`,
  )
}

function roleFor(role: unknown, isOwner: boolean): LinkRole {
  if (!LINK_ROLES.includes(role as LinkRole)) return refuse('/role', `Write one of ${LINK_ROLES.join(', ')}.`)
  if (role === 'producer' && !isOwner) return refuse('/role', 'Only the owner makes somebody a producer.')
  return role as LinkRole
}

function originFor(request: Request, origin: unknown): string {
  const offered = doorAddresses(request.headers.get('host') ?? '', isSecure(request.headers))
  const found = origin === undefined ? offered[0] : offered.find((one) => one.origin === origin)
  return (
    found?.origin ?? refuse('/origin', 'This computer has no such address now. Load the page again and choose one.')
  )
}
