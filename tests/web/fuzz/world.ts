import { readFileSync } from 'node:fs'
import { PASSPHRASE, post } from '../door-crew'
import { type RunningApp, startApp } from '../server'
import type { Schema, Schemas } from './from-schema'

/** As whom a request goes out. "theirs" is of the other shoot's crew; "ended" had a link that was revoked. */
export const VISITORS = [
  'owner',
  'producer',
  'crew',
  'viewer',
  'device',
  'calendar',
  'nobody',
  'ended',
  'theirs',
] as const
export type As = (typeof VISITORS)[number]

/** Stands in every text of a shoot: whoever has no right to it must never be sent it. */
export const CANARIES = { ours: 'Kestrelmoss', theirs: 'Quarrybloom' } as const
const MAY_SEE: Readonly<Record<As, readonly (keyof typeof CANARIES)[]>> = {
  owner: ['ours', 'theirs'],
  producer: ['ours'],
  crew: ['ours'],
  viewer: ['ours'],
  device: ['ours'],
  calendar: ['ours'],
  nobody: [],
  ended: [],
  theirs: ['theirs'],
}
export const hiddenFrom = (as: As) =>
  (['ours', 'theirs'] as const).filter((shoot) => !MAY_SEE[as].includes(shoot)).map((shoot) => CANARIES[shoot])

export interface Operation {
  readonly method: string
  readonly path: string
  readonly parameters: readonly { readonly name: string; readonly in: string; readonly schema: Schema }[]
  readonly body: { readonly type: string; readonly schema: Schema } | null
}
export interface World {
  readonly address: string
  readonly port: number
  /** What nobody should be told of the machine. */
  readonly secretPaths: readonly string[]
  /** What each sends to show who they are: some come by more than one session, which may each write so often. */
  readonly headers: Readonly<Record<As, readonly Readonly<Record<string, string>>[]>>
  readonly calendar: string
  /** Ids of shoots; "sand" is there to be written to. */
  readonly shoots: Readonly<Record<'ours' | 'theirs' | 'sand', string>>
  readonly photo: string
  readonly archive: Buffer
  readonly schemas: Schemas
  readonly operations: readonly Operation[]
  readonly pid: number | null
  stop(): Promise<void>
}

const PEOPLE = [
  { id: 'pat', roles: ['producer', 'presenter', 'cook'] },
  { id: 'cam', roles: ['camera', 'sound'] },
  { id: 'guest', roles: ['food-stylist'] },
  { id: 'spare', roles: ['assistant'] },
]
const MINIMAL = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))

/** A small shoot, each of its texts with a word of its own. */
export const shootWith = (word: string) => ({
  ...MINIMAL,
  title: `${word} title`,
  place: { ...MINIMAL.place, name: `${word} garden` },
  people: PEOPLE.map((person) => ({ ...person, name: `${word} ${person.id}` })),
  shots: [{ id: 'wide', title: `${word} wide`, from: 'meat-on', to: 'off-heat', locked: true }],
})
const JPEG_HEAD = Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46, 0])
export const photoOf = (word: string) => Buffer.concat([JPEG_HEAD, Buffer.from(word)])

const note = (id: string, text: string) => ({
  id,
  at: '2026-11-27T12:00:00Z',
  by: { device: 'desk', person: 'pat' },
  kind: 'note',
  text,
})

/** Throws where setting the scene itself is refused. */
async function told<T>(response: Response): Promise<T> {
  if (!response.ok) throw new Error(`${response.url}: ${response.status} ${await response.text()}`)
  return response.json()
}
const cookieIn = (response: Response) => ({ cookie: (response.headers.get('set-cookie') ?? '').split(';')[0] ?? '' })

/** An app in crew mode, or the one at EMBERSLATE_FUZZ_URL with the tests' passphrase, with two shoots and one of each visitor. */
export async function makeWorld(env: Readonly<Record<string, string>> = {}, folder?: string): Promise<World> {
  const url = process.env.EMBERSLATE_FUZZ_URL
  const app: RunningApp | null = url
    ? null
    : await startApp(folder, '0', { args: ['--crew'], env: { EMBERSLATE_PASSPHRASE: PASSPHRASE, ...env } })
  const address = url ?? (app as RunningApp).address
  try {
    const scene = await setScene(address)
    const secretPaths = [process.cwd(), ...(app ? [app.folder] : []), '/node_modules/']
    return { ...scene, secretPaths, pid: app?.pid ?? null, stop: async () => app?.stop() }
  } catch (fault) {
    await app?.stop()
    throw fault
  }
}

interface NewLink {
  readonly url: string
  readonly calendar: string
  readonly link: { readonly id: string }
}
async function setScene(address: string): Promise<Omit<World, 'secretPaths' | 'pid' | 'stop'>> {
  const at = (path: string) => address + path
  const run = Date.now().toString(36)
  const signIn = async () => cookieIn(await post(at('/api/door/sign-in'), { passphrase: PASSPHRASE }))
  const owner = await signIn()
  const make = async (name: string, word: string): Promise<string> => {
    const body = { writeId: `fuzz-${name}-${run}`, document: shootWith(word) }
    const { id } = await told<{ id: string }>(await post(at('/api/shoots'), body, owner))
    const entries = [note('01JD00000000000000000000AA', `${word} note`)]
    await told(await post(at(`/api/shoots/${id}/log`), { sent: '2026-11-27T12:00:00Z', entries }, owner))
    return id
  }
  const ours = await make('ours', CANARIES.ours)
  const theirs = await make('theirs', CANARIES.theirs)
  const sand = await make('sand', 'Sand')
  const photo = await told<{ name: string }>(
    await fetch(at(`/api/shoots/${ours}/photos`), { method: 'POST', headers: owner, body: photoOf(CANARIES.ours) }),
  )
  const link = async (shoot: string, person: string, role: string) =>
    told<NewLink>(await post(at(`/api/shoots/${shoot}/links`), { person, role }, owner))
  const join = async (url: string, headers: Record<string, string> = {}) =>
    cookieIn(await post(at('/api/door/join'), { code: url.split('#')[1] }, headers))
  // In by two links: what they may write goes to the sand, so that ours keeps its words.
  const both = async (person: string, role: string) =>
    join((await link(ours, person, role)).url, await join((await link(sand, person, role)).url))
  const crewLink = await link(ours, 'cam', 'crew')
  const gone = await link(ours, 'spare', 'crew')
  const ended = await join(gone.url)
  await fetch(at(`/api/shoots/${ours}/links/${gone.link.id}`), { method: 'DELETE', headers: owner })
  const key = await told<{ secret: string }>(await post(at(`/api/shoots/${ours}/keys`), { name: 'probe-1' }, owner))
  const headers = {
    owner: [owner, await signIn(), await signIn()],
    producer: [await both('pat', 'producer'), await both('pat', 'producer')],
    crew: [await both('cam', 'crew')],
    viewer: [await both('guest', 'viewer')],
    device: [{ authorization: `Bearer ${key.secret}` }],
    calendar: [{}],
    nobody: [{}],
    ended: [ended],
    theirs: [await join((await link(theirs, 'cam', 'crew')).url)],
  }
  const archive = await fetch(at(`/api/shoots/${sand}/archive`), { headers: owner })
  const api = await told<Api>(await fetch(at('/api/openapi.json')))
  return {
    address,
    port: Number(new URL(address).port),
    headers,
    calendar: new URL(crewLink.calendar).searchParams.get('key') ?? '',
    shoots: { ours, theirs, sand },
    photo: photo.name,
    archive: Buffer.from(await archive.arrayBuffer()),
    schemas: api.components.schemas,
    operations: operationsOf(api),
  }
}

/** Visitors whose sessions no longer open what they did: the requests of others must not have ended them. */
export async function strangers({ address, headers }: World): Promise<string[]> {
  const roles: Partial<Record<As, string>> = {
    producer: 'producer',
    crew: 'crew',
    viewer: 'viewer',
    theirs: 'crew',
    owner: 'owner',
  }
  const asked = Object.entries(roles).flatMap(([as, role]) => headers[as as As].map((who) => ({ as, role, who })))
  const told = await Promise.all(
    asked.map(async ({ who }) => (await (await fetch(`${address}/api/me`, { headers: who })).json()).role),
  )
  return asked.filter(({ role }, i) => told[i] !== role).map(({ as }, i) => `${as} is ${told[i]} now`)
}

interface Described {
  readonly parameters?: Operation['parameters']
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> }
}
interface Api {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Described>>>>
  readonly components: { readonly schemas: Schemas }
}
function operationsOf(api: Api): Operation[] {
  return Object.entries(api.paths).flatMap(([path, { parameters, ...methods }]) =>
    Object.entries(methods).map(([method, operation]) => {
      const [content] = Object.entries(operation.requestBody?.content ?? {})
      return {
        method: method.toUpperCase(),
        path,
        parameters: [...((parameters as unknown as Operation['parameters']) ?? []), ...(operation.parameters ?? [])],
        body: content ? { type: content[0], schema: content[1].schema } : null,
      }
    }),
  )
}
