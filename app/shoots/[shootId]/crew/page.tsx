import type { Metadata } from 'next'
import { headers } from 'next/headers'
import Link from 'next/link'
import { calendarPath } from '@/lib/data/door/calendar-keys'
import { keysOf } from '@/lib/data/door/device-keys'
import { doorAddresses } from '@/lib/data/door/door-addresses'
import { LINK_ROLES, linksOf } from '@/lib/data/door/links'
import { seenByLink } from '@/lib/data/door/sessions'
import { isSecure, visitorOf } from '@/lib/data/door/visitor'
import { crewMode } from '@/lib/data/env'
import { asRead } from '@/lib/plan/as-read'
import { formatClock, formatDay } from '@/lib/plan/clock'
import { instant } from '@/lib/units'
import { readersWay } from '../../../locale'
import { HelpLink } from '../../../ui/help-link'
import { WithCommand } from '../../../ui/with-command'
import { calls, crewLinks, eachCodeOpensThisShoots, exportOrEraseWhat, thisComputerOnly } from '../../../words/crew'
import { savedShoot } from '../../../workbench'
import { CrewDesk, type PersonRow } from './crew-desk'
import { KeysDesk } from './keys-desk'

export const metadata: Metadata = { title: crewLinks }
export const dynamic = 'force-dynamic'

export default async function CrewPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const { shoot } = await savedShoot(shootId)
  const from = await headers()
  const visitor = await visitorOf(from)
  const way = await readersWay()
  const dayOf = (at: number) => asRead(formatDay(instant(at), shoot.zone), way)
  const when = (at: number) => `${dayOf(at)}, ${asRead(formatClock(instant(at), shoot.zone), way)}`
  const keys = (await keysOf(shootId)).map(({ id, name, expires, seen }) => ({
    id,
    name,
    until: dayOf(expires),
    seen: seen === null ? null : when(seen),
  }))
  return (
    <main id="main" className="page">
      <header className="head">
        <Link href={`/shoots/${shootId}/calls`} className="small">
          {calls}
        </Link>
        <span className="name">{shoot.title}</span>
        <HelpLink page="crew" />
      </header>
      <h1>{crewLinks}</h1>
      {crewMode() ? (
        <>
          <p className="lead mt-2 no-print">{eachCodeOpensThisShoots}</p>
          <CrewDesk
            shootId={shootId}
            people={await peopleOf(shootId, shoot.people ?? [], dayOf, when)}
            addresses={doorAddresses(from.get('host') ?? '', isSecure(from))}
            roles={LINK_ROLES.filter((role) => visitor.owner || role !== 'producer')}
          />
          <KeysDesk shootId={shootId} keys={keys} />
        </>
      ) : (
        <p className="lead mt-2">
          <WithCommand text={thisComputerOnly} />
        </p>
      )}
      {visitor.owner && (
        <p className="small no-print mt-10">
          <Link className="textlink inline-flex min-h-11 items-center" href={`/shoots/${shootId}/crew/person`}>
            {exportOrEraseWhat}
          </Link>
        </p>
      )}
    </main>
  )
}

type Person = { readonly id: string; readonly name?: string; readonly roles?: readonly string[] }
async function peopleOf(
  shootId: string,
  people: readonly Person[],
  dayOf: (at: number) => string,
  when: (at: number) => string,
): Promise<readonly PersonRow[]> {
  const links = await linksOf(shootId)
  const seen = await seenByLink()
  const now = Date.now()
  const row = async (id: string, name: string, does: string): Promise<PersonRow> => {
    const link = links.find((one) => one.person === id)
    if (!link) return { id, name, does, link: null }
    const use = seen.get(link.id)
    const { role } = link
    const calendar = await calendarPath(link)
    const until = now < link.expires ? `until ${dayOf(link.expires)}` : `ended ${dayOf(link.expires)}`
    return {
      id,
      name,
      does,
      link: { id: link.id, role, until, phones: use?.phones ?? 0, seen: use ? when(use.seen) : null, calendar },
    }
  }
  const gone = links.filter(({ person }) => !people.some(({ id }) => id === person))
  return Promise.all([
    ...people.map(({ id, name, roles }) => row(id, name ?? id, (roles ?? []).join(', '))),
    ...gone.map(({ person }) => row(person, person, 'no longer in this shoot')),
  ])
}
