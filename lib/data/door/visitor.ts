import 'server-only'
import { behindProxy, crewMode } from '../env'
import { type Grant, HERE, NOBODY, type Visitor } from './access'
import { grantOfCalendar } from './calendar-keys'
import { keyBySecret } from './device-keys'
import { liveLinks } from './links'
import { keepUp, type Opened, type Session, sessionOf } from './sessions'

/** The request's headers, as the proxy, a route or a page has them. */
type Headers = { get(name: string): string | null }

/** The start command says how a request came in, and lets nobody else say it. */
export const isSecure = (headers: Headers) => headers.get('x-forwarded-proto') === 'https'
export const peerOf = (headers: Headers) => headers.get('x-emberslate-peer') ?? ''
const LOOPBACK = /^(127(\.\d{1,3}){3}|::1)$/
/** Never behind a proxy: everybody may seem to sit here then. */
export const isAtThisComputer = (headers: Headers) => !behindProxy() && LOOPBACK.test(peerOf(headers))

/** Over TLS the name itself makes a browser refuse it from a plain line or another path. */
const nameOf = (secure: boolean) => (secure ? '__Host-emberslate' : 'emberslate')

/** The cookie of a session; without one, the cookie that removes it. */
export function cookieOf(headers: Headers, opened: Opened | null): string {
  const secure = isSecure(headers)
  const age = opened ? Math.max(0, Math.floor((opened.expires - Date.now()) / 1000)) : 0
  const parts = [`${nameOf(secure)}=${opened?.secret ?? ''}`, 'Path=/', `Max-Age=${age}`, 'HttpOnly', 'SameSite=Lax']
  return [...parts, ...(secure ? ['Secure'] : [])].join('; ')
}

function secretIn(headers: Headers): string {
  const name = `${nameOf(isSecure(headers))}=`
  const pair = (headers.get('cookie') ?? '').split(/;\s*/).find((one) => one.startsWith(name))
  return pair?.slice(name.length) ?? ''
}

/** Who sends this. Nobody, where neither cookie nor key is good. */
export async function visitorOf(headers: Headers): Promise<Visitor> {
  return (await meet(headers)).visitor
}

export interface Met {
  readonly visitor: Visitor
  readonly session?: { readonly session: Session; readonly secret: string }
}
export async function meet(headers: Headers, url?: URL): Promise<Met> {
  if (!crewMode()) return { visitor: HERE }
  const calendar = url && (await grantOfCalendar(url))
  if (calendar) return { visitor: { owner: false, grants: [calendar], by: null, device: null } }
  // A key that ended is no good beside any cookie: whoever holds it should learn so.
  if (calendar === null) return { visitor: NOBODY }
  const bearer = /^Bearer (.+)$/i.exec(headers.get('authorization') ?? '')?.[1]
  if (bearer !== undefined) return { visitor: await deviceBy(bearer) }
  const secret = secretIn(headers)
  const session = await sessionOf(secret)
  if (!session) return { visitor: NOBODY }
  const grants = session.owner ? [] : await grantsOf(session)
  if (!session.owner && grants.length === 0) return { visitor: NOBODY }
  return { visitor: { owner: session.owner, grants, by: session.id, device: null }, session: { session, secret } }
}

/** A role and a person follow from the link as it is now, so that a change or an end is felt at once. */
const grantsOf = async ({ links }: Session): Promise<readonly Grant[]> =>
  (await liveLinks(links)).map(({ shoot, role, person }) => ({ shoot, role, person }))

async function deviceBy(secret: string): Promise<Visitor> {
  const key = await keyBySecret(secret)
  if (!key) return NOBODY
  const grants: readonly Grant[] = [{ shoot: key.shoot, role: 'device', person: null }]
  return { owner: false, grants, by: key.id, device: key.name }
}

/** The cookie with a new secret, where one is due. */
export async function renewedCookie(headers: Headers, met: Met): Promise<string | undefined> {
  if (!met.session) return undefined
  const opened = await keepUp(met.session.session, met.session.secret)
  return opened && cookieOf(headers, opened)
}
