import 'server-only'
import { z } from 'zod'
import type { Instant } from '../../units'
import { SmallFile } from '../small-file'
import { hashOf, newRowId, newSecret, SECRET } from './secret'

export const LINK_ROLES = ['crew', 'viewer', 'producer'] as const
export type LinkRole = (typeof LINK_ROLES)[number]

const LINK = z.object({
  id: z.string(),
  shoot: z.string(),
  person: z.string(),
  role: z.enum(LINK_ROLES),
  hash: z.string(),
  made: z.number(),
  expires: z.number(),
})
/** What lets one person into one shoot, on any number of phones. Its code is told once and not kept. */
export type Link = z.output<typeof LINK>
const file = new SmallFile<readonly Link[]>('door/links.json', z.array(LINK), [])

const DAY_MS = 86_400_000
/** Until the end of the second day after the shoot, wherever it is; a shoot long past still gives two days. */
export const expiryFor = (date: string, now = Date.now()) =>
  Math.max(Date.parse(`${date}T12:00Z`) + 3 * DAY_MS, now + 2 * DAY_MS) as Instant

/** The link of a person, new or under a new code; the old code opens nothing then, phones that are in stay in. */
export async function makeLink(
  wanted: Pick<Link, 'shoot' | 'person' | 'role' | 'expires'>,
): Promise<{ readonly link: Link; readonly code: string }> {
  const code = newSecret()
  let link: Link | undefined
  await file.change((links) => {
    const former = links.find(({ shoot, person }) => shoot === wanted.shoot && person === wanted.person)
    link = { id: former?.id ?? newRowId(), ...wanted, hash: hashOf(code), made: Date.now() }
    return [...links.filter((one) => one !== former), link]
  })
  return { link: link as Link, code }
}

/** Shuts the person out: their phones are out with the next request. True where there was such a link. */
export async function revokeLink(shoot: string, id: string): Promise<boolean> {
  let found = false
  await file.change((links) => {
    const rest = links.filter((link) => link.id !== id || link.shoot !== shoot)
    found = rest.length < links.length
    return found ? rest : links
  })
  return found
}

const isLive = ({ expires }: Link) => Date.now() < expires
export const linksOf = async (shoot: string) => (await file.read()).filter((link) => link.shoot === shoot)
/** Those of the named links that still open something, in the order in which they are named. */
export async function liveLinks(ids: readonly string[]): Promise<readonly Link[]> {
  const links = await file.read()
  return ids.flatMap((id) => links.filter((link) => link.id === id && isLive(link)))
}

export async function linkByCode(code: unknown): Promise<Link | undefined> {
  if (typeof code !== 'string' || !SECRET.test(code)) return undefined
  const hash = hashOf(code)
  return (await file.read()).find((link) => link.hash === hash && isLive(link))
}

/** A session may still come back to life by a link that is renewed; after that it goes from the file. */
export const FORGOTTEN_MS = 30 * DAY_MS
export const forgetLinks = (now = Date.now()) =>
  file.change((links) => {
    const rest = links.filter(({ expires }) => now - expires < FORGOTTEN_MS)
    return rest.length < links.length ? rest : links
  })
