import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { databaseUrl } from '@/lib/data/env'
import { previewErasure } from '@/lib/data/person/erase-person'
import { erasureWords } from '@/lib/data/person/erasure-words'
import { everybodyOf, findPerson, type Person, recordsOf } from '@/lib/data/person/person-records'
import {
  by,
  crewLinks,
  erase,
  erasingCannotBeUndone,
  everybody,
  everybodyWhoIsOrWas,
  exportWords,
  nobodyYet,
  notEvenByEarlierVersion,
  oneJsonFileWithEvery,
  saveWhatIsKept,
  whatIsKeptOfPerson,
  whileEmberslateRuns,
  withEmberslateStopped,
  withoutYesItPrintsWhat,
  yes,
} from '../../../../words/crew'
import { savedShoot } from '../../../../workbench'

export const metadata: Metadata = { title: whatIsKeptOfPerson }
export const dynamic = 'force-dynamic'

interface Asked {
  readonly params: Promise<{ shootId: string }>
  readonly searchParams: Promise<{ id?: string | string[] }>
}
const calledOf = ({ id, names }: Person) => names.at(-1) ?? id

/** Everybody of a shoot, and of one of them what is kept and what erasing would do. */
export default async function PersonPage({ params, searchParams }: Asked) {
  const [{ shootId }, { id }] = [await params, await searchParams]
  const { shoot } = await savedShoot(shootId)
  const people = await everybodyOf(shootId)
  const chosen = id === undefined ? undefined : people.find((one) => one.id === id)
  if (id !== undefined && !chosen) notFound()
  return (
    <main id="main" className="page">
      <header className="head">
        <Link href={chosen ? `/shoots/${shootId}/crew/person` : `/shoots/${shootId}/crew`} className="small">
          {chosen ? everybody : crewLinks}
        </Link>
        <span className="name">{shoot.title}</span>
      </header>
      {chosen ? (
        <OnePerson shootId={shootId} person={chosen} />
      ) : (
        <>
          <h1>{whatIsKeptOfPerson}</h1>
          <p className="lead mt-2">{everybodyWhoIsOrWas}</p>
          <ul className="m-0 mt-4 max-w-4xl list-none border-t-2 border-ink p-0">
            {people.length === 0 && <li className="small py-3">{nobodyYet}</li>}
            {people.map((one) => (
              <li key={one.id} className="border-b border-rule">
                <Link
                  className="flex min-h-11 items-center gap-3"
                  href={`/shoots/${shootId}/crew/person?id=${encodeURIComponent(one.id)}`}
                >
                  <b>{calledOf(one)}</b>
                  <span className="small">
                    {[
                      ...(one.names.length > 0 ? [one.id] : []),
                      ...(one.isGone ? ['no longer in this shoot'] : []),
                    ].join(', ')}
                  </span>
                </Link>
              </li>
            ))}
          </ul>
        </>
      )}
    </main>
  )
}

async function OnePerson({ shootId, person }: { shootId: string; person: Person }) {
  const records = await recordsOf(shootId)
  const found = await findPerson(records, [person.id], false)
  if (!found) notFound()
  const { parts } = erasureWords(records, found, await previewErasure(records, found.plan))
  const command = `npm run -s person -- erase --shoot ${shootId} --person '${person.id}'`
  return (
    <>
      <h1>{calledOf(person)}</h1>
      <h2 className="mt-6">{exportWords}</h2>
      <p className="small mt-1">{oneJsonFileWithEvery}</p>
      <a className="btn main mt-2" href={`/api/shoots/${shootId}/people/${encodeURIComponent(person.id)}`} download>
        {saveWhatIsKept}
      </a>
      <h2 className="mt-8">{erase}</h2>
      <p className="mt-1 max-w-3xl">
        <b>{erasingCannotBeUndone}</b>
        {notEvenByEarlierVersion} {databaseUrl() === null ? withEmberslateStopped : whileEmberslateRuns}
        {by}
      </p>
      <code className="mt-2 block max-w-3xl break-all bg-leaf p-3">{yes(command)}</code>
      <p className="small mt-2">{withoutYesItPrintsWhat}</p>
      {parts.map(({ head, lines }) => (
        <section key={head} aria-label={head} className="mt-6 max-w-4xl">
          <h3>{head}</h3>
          <ul className="m-0 mt-1 list-none border-t border-ink p-0">
            {lines.map((line) => (
              <li key={line} className="small wrap-anywhere border-b border-rule py-2">
                {line}
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  )
}
