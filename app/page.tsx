import type { Route } from 'next'
import { headers } from 'next/headers'
import Link from 'next/link'
import { mayEdit } from '@/lib/data/door/access'
import { visitorOf } from '@/lib/data/door/visitor'
import { crewMode } from '@/lib/data/env'
import { listShoots } from '@/lib/data/list-shoots'
import { DEMO_ID } from '@/lib/data/plant-demo'
import { asRead } from '@/lib/plan/as-read'
import { SAMPLES } from '@/lib/plan/samples'
import { readersWay } from './locale'
import { DemoDay } from './start/demo-day'
import { ShootList } from './start/shoot-list'
import { HelpLink } from './ui/help-link'
import { ImportButton } from './ui/import-button'
import * as words from './words/start'

export const dynamic = 'force-dynamic'

const day = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
})
/** "2027-05-15" by this computer's own calendar: in the evening UTC may have the next day. */
const today = new Intl.DateTimeFormat('sv-SE')

/** What this is, to who comes new; one's own shoots, to who comes back; a crew sees only what is theirs. */
export default async function ShootsPage() {
  const visitor = await visitorOf(await headers())
  const shoots = await listShoots(visitor)
  const isNew = visitor.owner && shoots.every(({ id }) => id === DEMO_ID)
  const demoId = shoots.some(({ id }) => id === DEMO_ID) ? DEMO_ID : null
  const pageOf = (id: string) => `/shoots/${id}/${mayEdit(visitor, id) ? 'plan' : 'set'}` as Route
  const way = await readersWay()
  const dayOf = (date: string) => asRead(day.format(new Date(`${date}T12:00Z`)), way)
  const now = today.format(new Date())
  return (
    <main id="main" className="page">
      <header className="head">
        <span className="name">{words.name}</span>
        <HelpLink />
      </header>
      <div className="cols-head">
        <h1>{isNew ? words.whatItIs : words.yourShoots}</h1>
        <span className="flex flex-wrap items-center gap-4">
          {crewMode() && (
            <Link className="btn quiet" href="/door">
              {words.door}
            </Link>
          )}
          {visitor.owner && <ImportButton />}
          {visitor.owner && (
            <Link className="btn main" href="/shoots/new">
              {words.newShoot}
            </Link>
          )}
        </span>
      </div>
      {isNew && (
        <>
          <p className="lead mt-3">{words.whatItDoes}</p>
          <DemoDay demoId={demoId} playsAtOnce />
          <Samples />
          <h2 className="mt-10">{words.yourShoots}</h2>
        </>
      )}
      {shoots.length === 0 ? (
        <p className="lead mt-4">{words.noShoots}</p>
      ) : (
        <ShootList shoots={shoots} now={now} pageOf={pageOf} dayOf={dayOf} />
      )}
      {visitor.owner && !isNew && <DemoDay demoId={demoId} playsAtOnce={false} />}
      <p className="small mt-10">
        <a className="textlink" href="/licences.txt">
          {words.licences}
        </a>
      </p>
    </main>
  )
}

const Samples = () => (
  <section aria-label={words.orSample} className="mt-10">
    <h2>{words.orSample}</h2>
    <ul className="mt-2 grid list-none gap-x-8 p-0 min-[700px]:grid-cols-2">
      {SAMPLES.map(({ id, title, says }) => (
        <li key={id} className="border-b border-rule py-2">
          <Link className="textlink inline-block py-2" href={`/shoots/new?from=${id}`} prefetch={false}>
            {title}
          </Link>
          <span className="small block">{says}</span>
        </li>
      ))}
    </ul>
  </section>
)
