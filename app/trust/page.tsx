import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { doorAddresses } from '@/lib/data/door-addresses'
import { setAuthority } from '@/lib/data/set-authority'
import { isSecure, visitorOf } from '@/lib/data/visitor'
import { DoorHead } from '../door/door-head'
import { GoOnTrusted } from './go-on-trusted'

export const metadata: Metadata = { title: 'Make this phone trust the set' }
export const dynamic = 'force-dynamic'

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' })

export default async function TrustPage() {
  const from = await headers()
  const authority = await setAuthority()
  const host = from.get('host') ?? ''
  const trusted = doorAddresses(host, isSecure(from)).filter((one) => one.trusted)
  const bare = host.replace(/:\d+$/, '')
  const same = trusted.find(({ origin }) => new URL(origin).hostname === bare) ?? trusted[0]
  const visitor = await visitorOf(from)
  return (
    <main id="main" className="page">
      <DoorHead name="Make this phone trust the set" />
      {!authority || !same ? (
        <NoLine secure={isSecure(from)} />
      ) : isSecure(from) ? (
        <h1>This phone is on the trusted line.</h1>
      ) : (
        <>
          <h1>Once per phone, about two minutes.</h1>
          <p className="lead mt-4">
            Then the board works without a network, keeps the screen lit and rings while you look elsewhere. Without it
            the board still works as long as its page is open.
          </p>
          <ol className="mt-6 max-w-3xl list-decimal pl-6 text-lg">
            <li className="py-2">
              <a className="btn main mt-1" href="/trust/set.crt" download="emberslate-set.crt">
                Download the certificate
              </a>
            </li>
            <Install />
            <li className="py-2">
              Where the phone shows a fingerprint, it must be this one:
              <code className="mt-2 block break-all rounded-sm bg-leaf p-3 text-base">{authority.fingerprint}</code>
              <span className="small">
                SHA-256, of “{authority.subject}”, good until {day.format(authority.ends)}.
              </span>
            </li>
            <li className="py-2">
              <GoOnTrusted origin={same.origin} carries={visitor.by !== null} />
            </li>
          </ol>
          <section aria-label="What this phone then trusts" className="mt-6 max-w-3xl">
            <h2>What this phone then trusts</h2>
            <p className="mt-2">
              Only names that end in .local, this computer’s own name and addresses of local networks: the certificate
              says so itself, and the phone keeps to it. After the shoot you can remove it where you installed it.
            </p>
          </section>
        </>
      )}
    </main>
  )
}

const NoLine = ({ secure }: { secure: boolean }) => (
  <>
    <h1>{secure ? 'This phone is on a trusted line.' : 'There is no trusted line here.'}</h1>
    <p className="lead mt-4">
      {secure
        ? 'Whoever runs the proxy before Emberslate keeps its certificate.'
        : 'Start Emberslate with npm start -- --crew; behind a proxy, open the proxy’s own https address.'}
    </p>
  </>
)

function Install() {
  return (
    <li className="py-2">
      Install it, by what the phone says:
      <div className="mt-2 grid grid-cols-1 gap-x-10 gap-y-4 sm:grid-cols-2">
        <section aria-label="A phone that says: profile downloaded">
          <p className="font-bold">It says “Profile Downloaded”</p>
          <ol className="mt-1 list-[lower-alpha] pl-6 text-base">
            <li className="py-1">Open Settings. At the top, tap “Profile Downloaded”, then Install.</li>
            <li className="py-1">
              Still in Settings: General, About, Certificate Trust Settings. Switch “Emberslate set …” on.
            </li>
          </ol>
        </section>
        <section aria-label="A phone that says nothing, or asks what the certificate is for">
          <p className="font-bold">It says nothing, or asks what it is for</p>
          <ol className="mt-1 list-[lower-alpha] pl-6 text-base">
            <li className="py-1">
              Open Settings and search for “CA certificate” (mostly under Security, Encryption and credentials, Install
              a certificate).
            </li>
            <li className="py-1">Tap CA certificate, Install anyway, and choose emberslate-set.crt.</li>
          </ol>
        </section>
      </div>
    </li>
  )
}
