import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { doorAddresses } from '@/lib/data/door/door-addresses'
import { setAuthority } from '@/lib/data/door/set-authority'
import { isSecure, visitorOf } from '@/lib/data/door/visitor'
import { asRead } from '@/lib/plan/as-read'
import { DoorHead } from '../door/door-head'
import { readersWay } from '../locale'
import { WithCommand } from '../ui/with-command'
import {
  aPhoneThatSaysNothing,
  aPhoneWithProfile,
  downloadCertificate,
  fingerprintMustBe,
  installAnyway,
  installItByWhatPhone,
  installProfile,
  makeThisPhoneTrustSet,
  oncePerPhone,
  openSettingsAndSearch,
  proxyKeepsIt,
  saysNothing,
  shaOfGoodUntil,
  startWithCrew,
  switchItOn,
  thereIsNoTrustedLine,
  thisPhoneIsOnTrusted,
  thisPhoneIsOnTrustedLine,
  whatIsTrusted,
  whatThisPhoneThenTrusts,
  whatTrustBrings,
  withProfile,
} from '../words/trust'
import { GoOnTrusted } from './go-on-trusted'

export const metadata: Metadata = { title: makeThisPhoneTrustSet }
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
      <DoorHead name={makeThisPhoneTrustSet} />
      {!authority || !same ? (
        <NoLine secure={isSecure(from)} />
      ) : isSecure(from) ? (
        <h1>{thisPhoneIsOnTrusted}</h1>
      ) : (
        <>
          <h1>{oncePerPhone}</h1>
          <p className="lead mt-4">{whatTrustBrings}</p>
          <ol className="mt-6 max-w-3xl list-decimal pl-6 text-lg">
            <li className="py-2">
              <a className="btn main mt-1" href="/trust/set.crt" download="emberslate-set.crt">
                {downloadCertificate}
              </a>
            </li>
            <Install />
            <li className="py-2">
              {fingerprintMustBe}
              <code className="mt-2 block break-all rounded-sm bg-leaf p-3 text-base">{authority.fingerprint}</code>
              <span className="small">
                {shaOfGoodUntil(authority.subject, asRead(day.format(authority.ends), await readersWay()))}
              </span>
            </li>
            <li className="py-2">
              <GoOnTrusted origin={same.origin} carries={visitor.by !== null} />
            </li>
          </ol>
          <section aria-label={whatThisPhoneThenTrusts} className="mt-6 max-w-3xl">
            <h2>{whatThisPhoneThenTrusts}</h2>
            <p className="mt-2">{whatIsTrusted}</p>
          </section>
        </>
      )}
    </main>
  )
}

const NoLine = ({ secure }: { secure: boolean }) => (
  <>
    <h1>{secure ? thisPhoneIsOnTrustedLine : thereIsNoTrustedLine}</h1>
    <p className="lead mt-4">
      <WithCommand text={secure ? proxyKeepsIt : startWithCrew} />
    </p>
  </>
)

function Install() {
  return (
    <li className="py-2">
      {installItByWhatPhone}
      <div className="mt-2 grid grid-cols-1 gap-x-10 gap-y-4 sm:grid-cols-2">
        <section aria-label={aPhoneWithProfile}>
          <p className="font-bold">{withProfile}</p>
          <ol className="mt-1 list-[lower-alpha] pl-6 text-base">
            <li className="py-1">{installProfile}</li>
            <li className="py-1">{switchItOn}</li>
          </ol>
        </section>
        <section aria-label={aPhoneThatSaysNothing}>
          <p className="font-bold">{saysNothing}</p>
          <ol className="mt-1 list-[lower-alpha] pl-6 text-base">
            <li className="py-1">{openSettingsAndSearch}</li>
            <li className="py-1">{installAnyway}</li>
          </ol>
        </section>
      </div>
    </li>
  )
}
