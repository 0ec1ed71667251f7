import type { Metadata } from 'next'
import { headers } from 'next/headers'
import Link from 'next/link'
import { type Grant, roleOf, type Visitor } from '@/lib/data/access'
import { crewMode } from '@/lib/data/env'
import { loadShoot } from '@/lib/data/load-shoot'
import { ownerIsKnown, SHORTEST } from '@/lib/data/owner'
import { isAtThisComputer, visitorOf } from '@/lib/data/visitor'
import { Folded } from '../ui/folded'
import { DoorHead } from './door-head'
import { PassphraseForm } from './passphrase-form'
import { SignOutButton } from './sign-out-button'

export const metadata: Metadata = { title: 'The door' }
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
    <h1>Only this computer opens Emberslate.</h1>
    <p className="lead mt-4">Nobody signs in. To let the crew in by their phones, stop it and start it anew with:</p>
    <p className="mt-4">
      <code>npm start -- --crew</code>
    </p>
  </>
)

const First = ({ here }: { here: boolean }) =>
  here ? (
    <>
      <h1>Choose the owner’s passphrase.</h1>
      <p className="lead mt-4">
        It opens everything here. You type it on this computer, and on another only if you want to work there. The crew
        never needs it: they get codes.
      </p>
      <PassphraseForm
        path="/api/door/passphrase"
        button="Choose it"
        to="/"
        secrets={[
          {
            name: 'passphrase',
            label: 'Passphrase',
            why: `At least ${SHORTEST} characters; four or five words that you remember are good.`,
            complete: 'new-password',
          },
        ]}
      />
    </>
  ) : (
    <>
      <h1>Nobody has a key to this door yet.</h1>
      <p className="lead mt-4">
        The owner chooses a passphrase first, at the computer that Emberslate runs on: open http://127.0.0.1 there, with
        the port that it printed.
      </p>
    </>
  )

const SignIn = ({ to }: { to: string }) => (
  <>
    <h1>Who is there?</h1>
    <p className="lead mt-4">
      Crew: scan your code with the camera, or open your link again. It is on this set’s network only.
    </p>
    <section aria-label="The owner" className="mt-6">
      <h2>The owner</h2>
      <PassphraseForm
        path="/api/door/sign-in"
        button="Sign in"
        to={to}
        secrets={[{ name: 'passphrase', label: 'Passphrase', complete: 'current-password' }]}
      />
    </section>
  </>
)

async function SignedIn({ visitor, beyond }: { visitor: Visitor; beyond: boolean }) {
  return (
    <>
      <h1>{beyond ? 'Your link does not reach so far.' : 'You are in.'}</h1>
      {beyond && <p className="lead mt-4">Ask the producer to do it, or for another link.</p>}
      {visitor.owner ? (
        <p className="lead mt-4">As the owner, on this device.</p>
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
          Make this phone trust the set
        </Link>
      </p>
      {visitor.owner && (
        <Folded summary="Choose another passphrase" fault={false}>
          <PassphraseForm
            path="/api/door/passphrase"
            button="Choose it"
            to="/door"
            secrets={[
              { name: 'former', label: 'The one that holds', complete: 'current-password' },
              {
                name: 'passphrase',
                label: 'The new one',
                why: `At least ${SHORTEST} characters. Every other device of the owner has to sign in again.`,
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
        as {person?.name ?? grant.person}; {role && role !== 'owner' ? MAY[role] : ''}
      </span>
    </li>
  )
}
