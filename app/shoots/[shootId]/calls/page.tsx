import type { Metadata } from 'next'
import type { Layout } from '@/lib/day/layout'
import type { Shoot } from '@/lib/plan/shoot'
import { ShootHead } from '../../../ui/shoot-head'
import { factsOf, layoutOf, openShoot } from '../../../workbench'
import { clockOf, slipOf, triggerWords, windowWords } from '../../call-words'
import { momentName } from '../../words'
import { NoLayout } from '../no-layout'

export const metadata: Metadata = { title: 'Calls' }
export const dynamic = 'force-dynamic'

export default async function CallsPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const open = await openShoot(shootId)
  const laid = layoutOf(open.shoot)
  return (
    <main id="main" className="page">
      <ShootHead
        id={shootId}
        title={open.shoot.title}
        facts={factsOf(open.shoot)}
        page="calls"
        canUndo={open.canUndo}
      />
      {laid.ok ? <Calls id={shootId} shoot={open.shoot} layout={laid.layout} /> : <NoLayout problems={laid.problems} />}
    </main>
  )
}

function Calls({ id, shoot, layout }: { id: string; shoot: Shoot; layout: Layout }) {
  const once = layout.calls.filter((call) => call.moment !== null)
  return (
    <>
      <div className="cols-head">
        <h1>
          Crew call {clockOf(shoot, layout.crewCall)}, wrap about {clockOf(shoot, layout.wrap)}.
        </h1>
        <span className="flex gap-4">
          <a className="btn main" href={`/shoots/${id}/call-sheet.pdf?paper=A4`}>
            Call sheet, A4
          </a>
          <a className="btn" href={`/shoots/${id}/call-sheet.pdf?paper=Letter`}>
            US Letter
          </a>
        </span>
      </div>
      <section aria-label="Calls that happen once" className="mt-6">
        <h2>Calls that happen once</h2>
        <div className="scroll-x">
          <table className="mt-2">
            <thead>
              <tr>
                <th scope="col">likely</th>
                <th scope="col">moment</th>
                <th scope="col">shot</th>
                <th scope="col">early to late</th>
                <th scope="col">stand by at</th>
                <th scope="col">or when the probe reads</th>
                <th scope="col">who</th>
              </tr>
            </thead>
            <tbody>
              {once.map((call) => (
                <tr key={call.id} className="moment">
                  <td className="time">{clockOf(shoot, call.window.likely)}</td>
                  <td className="font-semibold">{call.moment && momentName(call.moment)}</td>
                  <td>{shoot.shots?.find((shot) => shot.id === call.for)?.title}</td>
                  <td className="win">{windowWords(shoot, call)}</td>
                  <td>{call.trigger || call.follows ? 'called live' : clockOf(shoot, call.standby)}</td>
                  <td>{triggerWords(call)}</td>
                  <td>{call.people.join(', ')}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <p className="small mt-2">In nine cooks of ten the moment lies between early and late.</p>
      </section>
      <section aria-label="Slips" className="mt-8">
        <h2>One slip each</h2>
        <div className="mt-4 grid grid-cols-1 gap-8 sm:grid-cols-2 lg:grid-cols-4">
          {(shoot.people ?? []).map((person) => (
            <Slip key={person.id} shoot={shoot} layout={layout} person={person.id} />
          ))}
        </div>
      </section>
    </>
  )
}

function Slip({ shoot, layout, person }: { shoot: Shoot; layout: Layout; person: string }) {
  return (
    <article aria-label={`Slip of ${person}`}>
      <h3 className="border-b-2 border-ink pb-1">{person}</h3>
      <ol className="m-0 list-none p-0">
        {slipOf(shoot, layout, person).map((stop) => (
          <li
            key={stop.at + stop.what}
            className={`grid grid-cols-[52px_1fr] gap-3 border-b border-rule py-2 pl-2 ${stop.once ? 'shadow-[inset_3px_0_var(--ember)]' : ''}`}
          >
            <span className="time">{clockOf(shoot, stop.at)}</span>
            <span>
              {stop.what}
              <span className="small block">{stop.how || `until ${clockOf(shoot, stop.until)}`}</span>
            </span>
          </li>
        ))}
      </ol>
    </article>
  )
}
