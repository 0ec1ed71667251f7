import { headers } from 'next/headers'
import Link from 'next/link'
import { mayEdit } from '@/lib/data/access'
import { crewMode } from '@/lib/data/env'
import { listShoots } from '@/lib/data/list-shoots'
import { DEMO_ID } from '@/lib/data/plant-demo'
import { visitorOf } from '@/lib/data/visitor'
import { HelpLink } from './ui/help-link'
import { ImportButton } from './ui/import-button'

export const dynamic = 'force-dynamic'

const day = new Intl.DateTimeFormat('en-GB', {
  weekday: 'long',
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
})

export default async function ShootsPage() {
  const visitor = await visitorOf(await headers())
  const shoots = await listShoots(visitor)
  return (
    <main id="main" className="page">
      <header className="head">
        <span className="name">Emberslate</span>
        <span className="small">a cook plan becomes camera calls and a checked recipe card</span>
        <HelpLink />
      </header>
      <div className="cols-head">
        <h1>Shoots</h1>
        <span className="flex flex-wrap items-center gap-4">
          {crewMode() && (
            <Link className="btn quiet" href="/door">
              The door
            </Link>
          )}
          {visitor.owner && <ImportButton />}
          {visitor.owner && (
            <Link className="btn main" href="/shoots/new">
              New shoot
            </Link>
          )}
        </span>
      </div>
      {shoots.length === 0 ? (
        <p className="lead mt-4">Choose the cut and when you want to slice. The fire time follows.</p>
      ) : (
        <table className="mt-4">
          <thead>
            <tr>
              <th scope="col">shoot</th>
              <th scope="col">day</th>
            </tr>
          </thead>
          <tbody>
            {shoots.map((shoot) => (
              <tr key={shoot.id}>
                <td>
                  <Link
                    className="font-serif text-lg font-semibold"
                    href={`/shoots/${shoot.id}/${mayEdit(visitor, shoot.id) ? 'plan' : 'set'}`}
                  >
                    {shoot.title}
                  </Link>
                  {shoot.id === DEMO_ID && (
                    <Link className="textlink small ml-5" href={`/shoots/${shoot.id}/set/rehearsal`} prefetch={false}>
                      See the day played
                    </Link>
                  )}
                </td>
                <td className="win">{day.format(new Date(`${shoot.date}T12:00Z`))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="small mt-4">
        <a className="textlink" href="/licences.txt">
          What Emberslate is made of, and its licences
        </a>
      </p>
    </main>
  )
}
