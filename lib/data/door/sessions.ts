import 'server-only'
import { z } from 'zod'
import { sayFault } from '../say'
import { SmallFile } from '../small-file'
import { forgetOwnersCodes } from './carry'
import { LastSeen } from './last-seen'
import type { Link } from './links'
import { hashOf, newRowId, newSecret, SECRET } from './secret'
import { endedNow } from './session-ends'

const HOUR_MS = 3_600_000
/** A session gets a new secret so often. */
const ROTATES_MS = 6 * HOUR_MS
/** Requests under way still carry the old one. */
const OVERLAP_MS = 60_000
const OWNER_MS = 30 * 24 * HOUR_MS
/** So long after its link's end a session comes back to life when the link is renewed. */
const RENEWABLE_MS = 30 * 24 * HOUR_MS
/** A person has a few phones; of more, those seen longest ago are out. */
const MOST_PER_LINK = 20
const MOST_SECRETS = 4

const SESSION = z.object({
  id: z.string(),
  owner: z.boolean(),
  links: z.array(z.string()),
  /** Oldest first. `until` is null while the next one has not come back from the phone yet. */
  secrets: z.array(z.object({ hash: z.string(), made: z.number(), until: z.number().nullable() })),
  expires: z.number(),
  seen: z.number(),
})
/** One browser that is signed in. */
export type Session = z.output<typeof SESSION>
const file = new SmallFile<readonly Session[]>('door/sessions.json', z.array(SESSION), [])
const lastSeen = new LastSeen('sessions')
const seenOf = ({ id, seen }: Session) => lastSeen.of(id, seen)

const fresh = (secret: string, now: number) => ({ hash: hashOf(secret), made: now, until: null })
const isLive = (session: Session, now: number) => now < session.expires

export interface Opened {
  readonly secret: string
  readonly expires: number
}

/** Signs a browser in as the owner. */
export const openOwnerSession = () => openSession({ owner: true, links: [], expires: Date.now() + OWNER_MS })

/** Lets a browser in by links, the one opened last at the end. The links themselves end it; a renewed one goes on meanwhile. */
export const openLinkSession = (links: readonly Pick<Link, 'id' | 'expires'>[]) =>
  openSession({
    owner: false,
    links: links.map(({ id }) => id),
    expires: Math.max(...links.map(({ expires }) => expires)) + RENEWABLE_MS,
  })

async function openSession(wanted: Pick<Session, 'owner' | 'links' | 'expires'>): Promise<Opened> {
  const secret = newSecret()
  const now = Date.now()
  const session = { id: newRowId(), ...wanted, secrets: [fresh(secret, now)], seen: now }
  await file.change((sessions) => [
    ...withRoom(
      sessions.filter((one) => isLive(one, now)),
      wanted.links,
    ),
    session,
  ])
  return { secret, expires: wanted.expires }
}

function withRoom(sessions: readonly Session[], links: readonly string[]): readonly Session[] {
  const alike = sessions.filter((one) => one.links.some((link) => links.includes(link)))
  const out = [...alike].sort((a, b) => seenOf(b) - seenOf(a)).slice(MOST_PER_LINK - 1)
  return sessions.filter((one) => !out.includes(one))
}

/** The session that a cookie's secret belongs to. */
export async function sessionOf(secret: string, now = Date.now()): Promise<Session | undefined> {
  if (!SECRET.test(secret)) return undefined
  const hash = hashOf(secret)
  return (await file.read()).find(
    (session) =>
      isLive(session, now) &&
      session.secrets.some((one) => one.hash === hash && (one.until === null || now < one.until)),
  )
}

/**
 * Notes that a session is used, and returns a new secret where one is due. The old one stays good until the new one has
 * come back and a minute more: an answer that is lost on a bad line must not shut a phone out.
 */
export async function keepUp(session: Session, secret: string, now = Date.now()): Promise<Opened | undefined> {
  const hash = hashOf(secret)
  const { due, settles } = standing(session, hash, now)
  if (!due && !settles) return noteSeen(session, now)
  let next: string | undefined
  await file.change((sessions) =>
    sessions.map((one) => {
      if (one.id !== session.id) return one
      // Looked at anew: a page sends many requests at once, and another one may have changed it first.
      const { used, due } = standing(one, hash, now)
      next = due ? newSecret() : undefined
      return kept(one, used, next, now)
    }),
  )
  return next ? { secret: next, expires: session.expires } : undefined
}

async function noteSeen({ id }: Session, now: number): Promise<undefined> {
  const all = lastSeen.note(id, now)
  const write = (one: Session) => ({ ...one, seen: Math.max(one.seen, all?.get(one.id) ?? 0) })
  // Nobody is kept out because this could not be written.
  if (all) await file.change((sessions) => sessions.map(write)).catch((fault) => sayFault('seen-not-kept', fault))
}

/** Where in its session the secret that was used stands, whether a new one is due, and whether older ones end by it. */
function standing({ secrets }: Session, hash: string, now: number) {
  const used = secrets.findIndex((one) => one.hash === hash)
  const newest = secrets.length - 1
  const lost = used < newest && secrets[used]?.until === null
  const due =
    Math.abs(now - (secrets[newest]?.made ?? now)) > (lost ? OVERLAP_MS : ROTATES_MS) && (used === newest || lost)
  const settles = secrets.some(({ until }, i) => i < used && until === null)
  return { used, due, settles }
}

function kept(session: Session, used: number, next: string | undefined, now: number): Session {
  const settled = session.secrets.map((one, i) =>
    i < used && one.until === null ? { ...one, until: now + OVERLAP_MS } : one,
  )
  const good = settled.filter(({ until }) => until === null || now < until)
  return { ...session, secrets: next ? withinMost([...good, fresh(next, now)]) : good, seen: now }
}

/** Of too many the oldest stays: it is the one that the phone still has. */
const withinMost = (secrets: Session['secrets']) =>
  secrets.length > MOST_SECRETS ? [...secrets.slice(0, 1), ...secrets.slice(1 - MOST_SECRETS)] : secrets

/** Ends those sessions: signed out, shut out, or a new passphrase. */
async function endSessions(which: (session: Session) => boolean): Promise<void> {
  const ended: string[] = []
  await file.change((sessions) => {
    const out = sessions.filter(which)
    ended.push(...out.map(({ id }) => id))
    return out.length === 0 ? sessions : sessions.filter((one) => !out.includes(one))
  })
  await Promise.all(ended.map(endedNow))
}
export const endSession = (id: string) => endSessions((session) => session.id === id)
export async function endOwnerSessions(): Promise<void> {
  await forgetOwnersCodes()
  await endSessions((session) => session.owner)
}
/** Those that are over go from the file. */
export const forgetSessions = (now = Date.now()) =>
  file.change((sessions) => {
    const rest = sessions.filter((one) => isLive(one, now))
    return rest.length < sessions.length ? rest : sessions
  })
/** Takes a link from all who came by it; who has no other is out. */
export async function endByLink(link: string): Promise<void> {
  await endSessions((session) => !session.owner && session.links.every((one) => one === link))
  const touched: string[] = []
  await file.change((sessions) =>
    sessions.map((one) => {
      if (!one.links.includes(link)) return one
      touched.push(one.id)
      return { ...one, links: one.links.filter((other) => other !== link) }
    }),
  )
  await Promise.all(touched.map(endedNow))
}

/** When somebody last came by each link, and with how many browsers. */
export async function seenByLink(): Promise<ReadonlyMap<string, { readonly seen: number; readonly phones: number }>> {
  const seen = new Map<string, { seen: number; phones: number }>()
  for (const session of await file.read())
    for (const link of session.links) {
      const sofar = seen.get(link) ?? { seen: 0, phones: 0 }
      seen.set(link, { seen: Math.max(sofar.seen, seenOf(session)), phones: sofar.phones + 1 })
    }
  return seen
}
