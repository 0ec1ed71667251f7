import 'server-only'
import { createHmac, timingSafeEqual } from 'node:crypto'
import { z } from 'zod'
import { SmallFile } from '../small-file'
import type { Grant } from './access'
import { type Link, linksOf, liveLinks } from './links'
import { newSecret, SECRET } from './secret'

/** What the keys are made with. Two of 128 bits; in clear, for every key has to be shown again. */
const file = new SmallFile<{ readonly secret: string }>(
  'door/calendar.json',
  z.object({ secret: z.string().length(44) }),
  {
    secret: '',
  },
)
async function secretOf(): Promise<string> {
  const { secret } = await file.read()
  if (secret) return secret
  return (await file.change((now) => (now.secret ? now : { secret: newSecret() + newSecret() }))).secret
}

/** 128 bits that let a calendar read one person's calls; they follow from the link and end with it. */
async function calendarKey({ shoot, id }: Pick<Link, 'shoot' | 'id'>): Promise<string> {
  const made = createHmac('sha256', await secretOf())
    .update(`${shoot}/${id}`)
    .digest()
  return made.subarray(0, 16).toString('base64url')
}

export const calendarPath = async (link: Pick<Link, 'shoot' | 'id'>) =>
  `/api/shoots/${link.shoot}/calls.ics?key=${await calendarKey(link)}`

const CALENDAR = /^\/api\/shoots\/([^/]+)\/calls\.ics$/

/** What the key in a calendar's address opens; null where it opens nothing, undefined where the address has none. */
export async function grantOfCalendar(url: URL): Promise<Grant | null | undefined> {
  const key = url.searchParams.get('key')
  const shoot = CALENDAR.exec(url.pathname)?.[1]
  if (key === null || shoot === undefined) return undefined
  if (!SECRET.test(key)) return null
  const links = await linksOf(shoot)
  for (const link of await liveLinks(links.map(({ id }) => id)))
    if (same(key, await calendarKey(link))) return { shoot, role: 'calendar', person: link.person }
  return null
}
const same = (key: string, made: string) => timingSafeEqual(Buffer.from(key), Buffer.from(made))
