import type { Metadata } from 'next'
import { headers } from 'next/headers'
import Link from 'next/link'
import { type Grant, roleOf, type Visitor } from '@/lib/data/door/access'
import { ownerIsKnown, SHORTEST } from '@/lib/data/door/owner'
import { isAtThisComputer, visitorOf } from '@/lib/data/door/visitor'
import { crewMode } from '@/lib/data/env'
import { loadShoot } from '@/lib/data/load-shoot'
import { Folded } from '../ui/folded'
import {
  askProducer,
  asOwnerOnThisDevice,
  asWords,
  beyondLink,
  chooseAnotherPassphrase,
  chooseIt,
  chooseOwnersPassphrase,
  closedLead,
  crewLead,
  firstPassphraseWhy,
  makeThisPhoneTrustSet,
  newOne,
  nextPassphraseWhy,
  nobodyHasKey,
  noKeyLead,
  npmStartCrew,
  oneThatHolds,
  passphrase,
  passphraseLead,
  signIn,
  theDoor,
  theOwner,
  thisComputerOnly,
  whoIsThere,
  youAreIn,
} from '../words/door'
import { DoorHead } from './door-head'
import { PassphraseForm } from './passphrase-form'
import { SignOutButton } from './sign-out-button'

export const metadata: Metadata = { title: theDoor }
export const dynamic = 'force-dynamic'

type Asked = { to?: string | string[]; beyond?: string | string[] }

/** A page of our own, and nothing that leads elsewhere. */
const ownPage = (to: string | string[] | undefined) =>
  typeof to === 'string' && /^\/(?![/\\])[\w/.\-[\]%~]*$/.test(to) && to !== '/door' ? to : '/'

export default async function DoorPage({ searchParams }: { searchParams: Promise<Asked> }) {
  const asked = await searchParams
  const from = await headers()
  const visitor = await visitorOf(from)
  return (
    <main id="main" className="page">
      <DoorHead name="The door" />
      {!crewMode() ? (
        <Closed />
      ) : visitor.owner || visitor.grants.length > 0 ? (
        <SignedIn visitor={visitor} beyond={asked.beyond !== undefined} />
      ) : (await ownerIsKnown()) ? (
        <SignIn to={ownPage(asked.to)} />
      ) : (
        <First here={isAtThisComputer(from)} />
      )}
    </main>
  )
}

const Closed = () => (
  <>
    <h1>{thisComputerOnly}</h1>
    <p className="lead mt-4">{closedLead}</p>
    <p className="mt-4">
      <code>{npmStartCrew}</code>
    </p>
  </>
)

const First = ({ here }: { here: boolean }) =>
  here ? (
    <>
      <h1>{chooseOwnersPassphrase}</h1>
      <p className="lead mt-4">{passphraseLead}</p>
      <PassphraseForm
        path="/api/door/passphrase"
        button={chooseIt}
        to="/"
        secrets={[
          {
            name: 'passphrase',
            label: passphrase,
            why: firstPassphraseWhy(SHORTEST),
            complete: 'new-password',
          },
        ]}
      />
    </>
  ) : (
    <>
      <h1>{nobodyHasKey}</h1>
      <p className="lead mt-4">{noKeyLead}</p>
    </>
  )

const SignIn = ({ to }: { to: string }) => (
  <>
    <h1>{whoIsThere}</h1>
    <p className="lead mt-4">{crewLead}</p>
    <section aria-label={theOwner} className="mt-6">
      <h2>{theOwner}</h2>
      <PassphraseForm
        path="/api/door/sign-in"
        button={signIn}
        to={to}
        secrets={[{ name: 'passphrase', label: passphrase, complete: 'current-password' }]}
      />
    </section>
  </>
)

async function SignedIn({ visitor, beyond }: { visitor: Visitor; beyond: boolean }) {
  return (
    <>
      <h1>{beyond ? beyondLink : youAreIn}</h1>
      {beyond && <p className="lead mt-4">{askProducer}</p>}
      {visitor.owner ? (
        <p className="lead mt-4">{asOwnerOnThisDevice}</p>
      ) : (
        <ul className="mt-4 list-none p-0">
          {visitor.grants.map((grant) => (
            <Place key={grant.shoot} visitor={visitor} grant={grant} />
          ))}
        </ul>
      )}
      <p className="mt-6 flex flex-wrap items-center gap-4">
        <SignOutButton />
        <Link className="btn quiet" href="/trust">
          {makeThisPhoneTrustSet}
        </Link>
      </p>
      {visitor.owner && (
        <Folded summary={chooseAnotherPassphrase} fault={false}>
          <PassphraseForm
            path="/api/door/passphrase"
            button={chooseIt}
            to="/door"
            secrets={[
              { name: 'former', label: oneThatHolds, complete: 'current-password' },
              {
                name: 'passphrase',
                label: newOne,
                why: nextPassphraseWhy(SHORTEST),
                complete: 'new-password',
              },
            ]}
          />
        </Folded>
      )}
    </>
  )
}

const MAY = {
  producer: 'you may change and log',
  crew: 'you may read and log',
  viewer: 'you may read',
  device: '',
  calendar: '',
} as const

async function Place({ visitor, grant }: { visitor: Visitor; grant: Grant }) {
  const saved = await loadShoot(grant.shoot)
  const people = (saved?.document.people ?? []) as readonly { id: string; name?: string }[]
  const person = people.find(({ id }) => id === grant.person)
  const role = roleOf(visitor, grant.shoot)
  return (
    <li className="border-b border-rule py-2">
      <Link className="font-serif text-lg font-semibold" href={`/shoots/${grant.shoot}/set`}>
        {String(saved?.document.title ?? 'A shoot')}
      </Link>
      <span className="small block">
        {asWords} {person?.name ?? grant.person}; {role && role !== 'owner' ? MAY[role] : ''}
      </span>
    </li>
  )
}
