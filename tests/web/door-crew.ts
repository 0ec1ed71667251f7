import { readFileSync } from 'node:fs'
import type { Role } from '../../lib/data/door/access'
import { entryId } from '../../lib/log/entry-id'
import { instant } from '../../lib/units'
import { type RunningApp, startApp } from './server'

export const PASSPHRASE = 'four plain words here'
export type Who = Exclude<Role, 'calendar'> | 'nobody'
export const ALL: readonly Who[] = ['nobody', 'owner', 'producer', 'crew', 'viewer', 'device']
const PEOPLE = { producer: 'pat', crew: 'cam', viewer: 'guest' } as const

/** A set with one of each role, who belong to one shoot, and another shoot that is not theirs. */
export interface Crew {
  readonly app: RunningApp
  readonly own: string
  readonly other: string
  /** What each sends to show who they are. */
  readonly headers: Readonly<Record<Who, Record<string, string>>>
  readonly links: Readonly<Record<'producer' | 'crew' | 'viewer', string>>
  /** The path by which a calendar of each reads their calls. */
  readonly calendars: Crew['links']
}

export const json = { 'content-type': 'application/json' }
export const post = (url: string, body: unknown, headers: Record<string, string> = {}) =>
  fetch(url, { method: 'POST', headers: { ...json, ...headers }, body: JSON.stringify(body), redirect: 'manual' })
const cookieOf = (response: Response) => ({ cookie: (response.headers.get('set-cookie') ?? '').split(';')[0] ?? '' })

/** A small shoot whose day cannot be laid out, for want of a camera: pages and sheets say so at once. */
const shootCalled = (title: string) => ({
  ...JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8')),
  title,
  people: Object.values(PEOPLE).map((id) => ({ id, roles: ['camera'] })),
  shots: [{ id: 'wide', title: 'Wide', from: 'meat-on', to: 'off-heat', locked: true }],
})

export async function startCrew(): Promise<Crew> {
  const env = { EMBERSLATE_PASSPHRASE: PASSPHRASE, EMBERSLATE_LOG: 'requests' }
  const app = await startApp(undefined, '0', { args: ['--crew'], env })
  const at = (path: string) => app.address + path
  const owner = cookieOf(await post(at('/api/door/sign-in'), { passphrase: PASSPHRASE }))
  const made = async (title: string) =>
    (await (await post(at('/api/shoots'), { writeId: `door-${title}`, document: shootCalled(title) }, owner)).json()).id
  const [own, other] = [await made('Shoot-of-ours'), await made('Shoot-of-theirs')]
  const links: Record<string, string> = {}
  const calendars: Record<string, string> = {}
  const headers: Record<string, Record<string, string>> = {}
  for (const [role, person] of Object.entries(PEOPLE)) {
    const link = await (await post(at(`/api/shoots/${own}/links`), { person, role }, owner)).json()
    links[role] = link.link.id
    calendars[role] = link.calendar.slice(new URL(link.calendar).origin.length)
    headers[role] = cookieOf(await post(at('/api/door/join'), { code: link.url.split('#')[1] }))
  }
  const { secret } = await (await post(at(`/api/shoots/${own}/keys`), { name: 'probe-1' }, owner)).json()
  const all = { ...headers, nobody: {}, owner, device: { authorization: `Bearer ${secret}` } }
  return {
    app,
    own,
    other,
    headers: all as unknown as Crew['headers'],
    links: links as Crew['links'],
    calendars: calendars as Crew['links'],
  }
}

/** An entry of the log, by whom it is said to be. */
export function entryBy(by: object, more: object = {}) {
  const now = Date.now()
  const id = entryId(instant(now), crypto.getRandomValues(new Uint8Array(10)))
  const reading = { kind: 'reading', cook: 'hero', sensor: 'core', temp: '21 °C' }
  return { id, at: new Date(now).toISOString(), by, ...reading, ...more }
}
export const sending = (entry: object) => ({ sent: new Date().toISOString(), entries: [entry] })
