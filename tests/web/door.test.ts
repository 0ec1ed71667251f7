import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { get } from 'node:http'
import { request } from 'node:https'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROUTES, type Row } from '../../lib/data/door/access'
import { axeViolations } from './axe'
import { openBrowser } from './browser'
import { ALL, type Crew, entryBy, json, PASSPHRASE, post, sending, startCrew, type Who } from './door-crew'

let set: Crew
beforeAll(async () => {
  set = await startCrew()
}, 300_000)
afterAll(() => set.app.stop())
const at = (path: string) => set.app.address + path

/** What stands under app: each page and each method of each route. */
function routesUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const inside = `${folder}/${entry.name}`
    if (entry.isDirectory()) return routesUnder(inside)
    const path = folder.slice('app'.length) || '/'
    if (entry.name === 'page.tsx') return [`GET ${path}`]
    if (entry.name !== 'route.ts') return []
    const methods = [...readFileSync(inside, 'utf8').matchAll(/^export (?:const|(?:async )?function) ([A-Z]+)\b/gm)]
    return methods.map(([, method]) => `${method} ${path}`)
  })
}

describe('the table of who may do what', () => {
  it('has a row for every page and route, and no row for none', () => {
    const rows = ROUTES.map(({ method, path }) => `${method} ${path}`)
    expect(routesUnder('app').length).toBeGreaterThan(40)
    expect(rows.sort()).toEqual(routesUnder('app').sort())
  })
})

/** A page is asked for as a browser asks before a click: past the door Next answers at once, and nothing is drawn. */
const PEEK = { rsc: '1', 'next-router-prefetch': '1' }
const isPage = ({ path }: Row) => !path.startsWith('/api/') && !path.includes('.')
function ask({ method, path }: Row, who: Who, shoot: string) {
  const url = at(path.replace(/\[(id|shootId)\]/, shoot).replace(/\[\w+\]/, 'none-such'))
  const stop = AbortSignal.timeout(60_000)
  const headers = { ...set.headers[who], ...(method === 'GET' ? {} : json), ...(isPage({ path } as Row) ? PEEK : {}) }
  // No JSON: a route that is reached says so, and keeps nothing.
  const body = method === 'GET' || method === 'DELETE' ? undefined : '{'
  return fetch(url, { method, headers, body, redirect: 'manual', signal: stop })
}

/** What the door said; "in" where it is the route itself that answered. */
async function saidTo(row: Row, who: Who, shoot: string) {
  const response = await ask(row, who, shoot)
  const location = response.headers.get('location') ?? ''
  const stream = response.headers.get('content-type')?.startsWith('text/event-stream')
  const text = stream ? '' : await response.text()
  if (stream) await response.body?.cancel()
  const code = /"code":"([\w-]+)"/.exec(text)?.[1]
  if (response.status === 307 && location.includes('/door?to=')) return 'signed-out'
  if (response.status === 307 && location.includes('/door?beyond=')) return 'may-not'
  if (code === 'signed-out' || code === 'may-not') return code
  // A route that lacks a link, a key or a photograph says so in its own words.
  const none = /"detail":"There is no such shoot|There is no such shoot or page/.test(text)
  return response.status === 404 && none ? 'not-found' : 'in'
}

/** Two that change who is signed in are tried apart. */
const TRIED = ROUTES.filter(({ path }) => path !== '/api/door/sign-out' && path !== '/api/door/passphrase')
const expected = (row: Row, who: Who) => {
  if (row.who.includes('nobody') || row.who.includes(who)) return 'in'
  return who === 'nobody' ? 'signed-out' : 'may-not'
}
const inTurns = async <T>(work: readonly (() => Promise<T>)[]): Promise<T[]> => {
  const done: T[] = []
  for (let i = 0; i < work.length; i += 8) done.push(...(await Promise.all(work.slice(i, i + 8).map((one) => one()))))
  return done
}

describe('every route', () => {
  it('lets in whom its row names, and nobody else', async () => {
    const cases = TRIED.flatMap((row) => ALL.map((who) => ({ row, who })))
    const told = await inTurns(
      cases.map(({ row, who }) => async () => [`${who}: ${row.method} ${row.path}`, await saidTo(row, who, set.own)]),
    )
    expect(told).toEqual(cases.map(({ row, who }) => [`${who}: ${row.method} ${row.path}`, expected(row, who)]))
  }, 60_000)

  it("is not there for who asks for another's shoot, as if there were none", async () => {
    const guests = ALL.filter((who) => who !== 'nobody' && who !== 'owner')
    const rows = ROUTES.filter(({ path }) => /\/\[(id|shootId)\]/.test(path))
    expect(rows.length).toBeGreaterThan(20)
    const cases = rows.flatMap((row) => guests.map((who) => ({ row, who })))
    const told = await inTurns(
      cases.map(({ row, who }) => async () => {
        const [theirs, none] = await Promise.all([ask(row, who, set.other), ask(row, who, 'no-such-shoot')])
        const text = await theirs.text()
        return [theirs.status, none.status, text.includes('Shoot-of-theirs'), text.length > 0] as const
      }),
    )
    expect(told).toEqual(cases.map(() => [404, 404, false, true]))
  }, 60_000)
})

describe('the card for everybody', () => {
  it('is not there for a stranger until its author opens it, and then names nobody of the crew', async () => {
    const asked = () => fetch(at(`/cards/${set.own}`))
    expect((await asked()).status).toBe(404)
    const shoot = at(`/api/shoots/${set.own}`)
    const saved = await (await fetch(shoot, { headers: set.headers.owner })).json()
    const document = { ...saved.document, publish: { open: true } }
    const body = JSON.stringify({ document, writeId: 'card-open', baseVersion: saved.version })
    await fetch(shoot, { method: 'PUT', headers: { ...json, ...set.headers.owner }, body })
    const open = await asked()
    const page = await open.text()
    expect([open.status, page.includes('Your own roast')]).toEqual([200, true])
    for (const word of ['"pat"', '"cam"', 'Shoot-of-ours', String(document.place.lat)]) expect(page).not.toContain(word)
  }, 60_000)
})

describe('a crew', () => {
  const log = (who: Who, entry: object) => post(at(`/api/shoots/${set.own}/log`), sending(entry), set.headers[who])
  it('sees its own shoot in the list, and the server knows each by name', async () => {
    const seen = async (who: Who) =>
      (await (await fetch(at('/api/shoots'), { headers: set.headers[who] })).json()).shoots?.length
    expect([await seen('owner'), await seen('crew'), await seen('nobody')]).toEqual([3, 1, undefined])
    const me = async (who: Who) => (await fetch(at('/api/me'), { headers: set.headers[who] })).json()
    expect(await me('crew')).toEqual({ role: 'crew', person: { shoot: set.own, id: 'cam' }, crewMode: true })
    expect(await me('owner')).toMatchObject({ role: 'owner', person: null })
    expect(await me('nobody')).toMatchObject({ role: null, person: null })
  })
  it.each([
    ['crew', { device: 'phone-1', person: 'cam' }, {}, null],
    ['crew', { device: 'phone-1', person: 'pat' }, {}, '/entries/0/by/person'],
    ['crew', { device: 'phone-1' }, {}, '/entries/0/by/person'],
    ['producer', { device: 'phone-2', person: 'cam' }, {}, null],
    ['device', { device: 'probe-1' }, {}, null],
    ['device', { device: 'probe-2' }, {}, '/entries/0/by/device'],
    [
      'device',
      { device: 'probe-1' },
      { kind: 'note', text: 'x', cook: undefined, sensor: undefined, temp: undefined },
      '/entries/0/kind',
    ],
  ] as const)('%s logs by %j what is theirs to log', async (who, by, more, pointer) => {
    const answer = await log(who, entryBy(by, more))
    const { problems } = await answer.json()
    expect([answer.status, problems?.[0]?.pointer ?? null]).toEqual([pointer ? 422 : 200, pointer])
  })
  it('is out at once when its link is revoked, and what it was listening to ends', async () => {
    const headers = set.headers.viewer
    const events = await fetch(at(`/api/shoots/${set.own}/events`), { headers })
    const reader = (events.body as ReadableStream<Uint8Array>).getReader()
    await reader.read()
    const link = at(`/api/shoots/${set.own}/links/${set.links.viewer}`)
    const calendar = at(set.calendars.viewer)
    expect((await fetch(calendar)).status).not.toBe(401)
    expect((await fetch(link, { method: 'DELETE', headers: set.headers.producer })).status).toBe(200)
    expect((await fetch(calendar)).status).toBe(401)
    for (let over = false; !over; ) over = (await reader.read()).done
    expect((await fetch(at('/api/shoots'), { headers })).status).toBe(401)
  })
})

describe('a producer', () => {
  it('is shut out or made less by the owner alone', async () => {
    const links = at(`/api/shoots/${set.own}/links`)
    const headers = set.headers.producer
    const shut = await fetch(`${links}/${set.links.producer}`, { method: 'DELETE', headers })
    const less = await post(links, { person: 'pat', role: 'crew' }, headers)
    expect([shut.status, less.status]).toEqual([403, 422])
    expect((await shut.json()).detail).toBe('Only the owner shuts a producer out.')
  })
  it('signs in, makes a code, and a phone that opens it is on the set board; the pages hold for axe', async () => {
    const browser = await openBrowser()
    try {
      const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage()
      await page.goto(at(`/shoots/${set.own}/crew`))
      await page.getByLabel('Passphrase').fill(PASSPHRASE)
      await page.getByRole('button', { name: 'Sign in' }).click()
      await page.getByRole('button', { name: 'New code for cam' }).click()
      await page.getByRole('img', { name: 'Code for cam' }).waitFor()
      expect(await axeViolations(page)).toEqual([])
      const url = await page
        .getByText(/\/join#/)
        .first()
        .textContent()
      const phone = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage()
      await phone.goto(at(`/join#${url?.split('#')[1]}`))
      await phone.waitForURL(at(`/shoots/${set.own}/set`))
      await phone.goto(at(`/shoots/${set.own}/plan`))
      await phone.getByText('the producer changes it').waitFor()
      expect(await phone.getByRole('textbox', { disabled: false }).count()).toBe(0)
      await phone.goto(at('/trust'))
      expect(await axeViolations(phone)).toEqual([])
    } finally {
      await browser.close()
    }
  }, 120_000)
})

describe('every answer', () => {
  it('ends a line that wants to speak anything but HTTP', async () => {
    const headers = { connection: 'Upgrade', upgrade: 'websocket' }
    const status = await new Promise((resolve, reject) => {
      get(at('/healthz'), { headers, timeout: 5000 }, (response) => {
        response.resume().on('end', () => resolve(response.statusCode))
      })
        .on('timeout', () => reject(new Error('the line stays open')))
        .on('error', reject)
    })
    expect(status).toBe(400)
  })
  it('names its own scripts and lets no other run', async () => {
    const page = await fetch(at('/door'))
    const policy = page.headers.get('content-security-policy') ?? ''
    const nonce = /script-src 'self' 'nonce-([\w+/=]+)' 'strict-dynamic' 'wasm-unsafe-eval';/.exec(policy)?.[1]
    const scripts = [...(await page.text()).matchAll(/<script\b[^>]*>/g)].map(([tag]) => tag)
    expect(scripts.length).toBeGreaterThan(5)
    expect(scripts.filter((tag) => !tag.includes(`nonce="${nonce}"`))).toEqual([])
    expect(policy).toContain("frame-ancestors 'none'")
    expect(page.headers.get('x-content-type-options')).toBe('nosniff')
    expect((await fetch(at('/door'))).headers.get('content-security-policy')).not.toBe(policy)
  })
  it('is refused under a foreign name, and to a page of another site', async () => {
    const { hostname, port } = new URL(set.app.address)
    const foreign = await new Promise<number>((resolve) => {
      const headers = { host: 'elsewhere.example' }
      get({ hostname, port, path: '/door', headers }, (response) => resolve(response.statusCode ?? 0))
    })
    expect(foreign).toBe(421)
    const claimed = await post(at('/api/door/sign-out'), {}, { 'x-forwarded-proto': 'https' })
    expect(claimed.headers.get('set-cookie')).toMatch(/^emberslate=;/)
    const headers = { ...set.headers.owner, origin: 'http://elsewhere.example' }
    expect((await post(at('/api/door/sign-out'), {}, headers)).status).toBe(403)
  })
  it('comes by the trusted line under a certificate that the set’s authority signed, with a cookie that stays there', async () => {
    const page = await (await fetch(at('/trust'))).text()
    const port = /https:\/\/(?:[\w.-]+|\[[\da-f:]+\]):(\d+)/.exec(page)?.[1]
    const der = Buffer.from(await (await fetch(at('/trust/set.crt'))).arrayBuffer())
    const ca = `-----BEGIN CERTIFICATE-----\n${der.toString('base64')}\n-----END CERTIFICATE-----\n`
    const over = (path: string, method: string) =>
      new Promise<{ text: string; cookie: string | undefined }>((resolve, reject) => {
        const asked = request({ hostname: '127.0.0.1', port, path, method, ca }, (response) => {
          const cookie = response.headers['set-cookie']?.[0]
          response.setEncoding('utf8').once('data', (text) => resolve({ text, cookie }))
        })
        asked.once('error', reject).end()
      })
    expect(JSON.parse((await over('/api/me', 'GET')).text)).toMatchObject({ role: null, crewMode: true })
    expect((await over('/api/door/sign-out', 'POST')).cookie).toMatch(
      /^__Host-emberslate=;.*HttpOnly; SameSite=Lax; Secure$/,
    )
  })
})

describe('the door', () => {
  it('keeps no secret in clear, and lets a guesser wait', async () => {
    const kept = ['owner', 'links', 'keys', 'sessions'].map((name) =>
      readFileSync(`${set.app.folder}/door/${name}.json`, 'utf8'),
    )
    const secrets = ALL.flatMap((who) => Object.values(set.headers[who])).map((said) => said.split(/[= ]/).at(-1) ?? '')
    expect(secrets.filter((secret) => secret.length >= 22)).toHaveLength(5)
    expect(secrets.filter((secret) => kept.some((text) => text.includes(secret)))).toEqual([])
    // Whoever guesses may say that each guess comes from elsewhere.
    const guess = (from: string) =>
      post(at('/api/door/sign-in'), { passphrase: 7 }, { 'x-forwarded-for': from, 'x-emberslate-peer': from })
    const answers = await inTurns(Array.from({ length: 10 }, (_, i) => () => guess(`192.168.7.${i}`)))
    const last = answers.filter(({ status }) => status === 429)
    expect(last.length).toBeGreaterThan(0)
    expect(Number(last[0]?.headers.get('retry-after'))).toBeGreaterThan(0)
  })
})

/** As a load balancer asks, by whatever name it has for us. */
const watched = (path: string, host: string) =>
  new Promise<{ status: number; body: unknown }>((resolve, reject) => {
    const { hostname, port } = new URL(set.app.address)
    get({ hostname, port, path, headers: { host } }, (response) => {
      response.setEncoding('utf8').once('data', (text) => {
        resolve({ status: response.statusCode ?? 0, body: JSON.parse(text) })
      })
    }).once('error', reject)
  })

describe('what the server says of itself', () => {
  it('is whether it lives and can work, to anybody under any name; why, to this computer alone', async () => {
    expect(await watched('/healthz', '10.1.2.3')).toEqual({ status: 200, body: { ok: true } })
    const names = ['database', 'migrations', 'disk', 'threads']
    const checks = names.map((name) => ({ name, ok: true }))
    expect(await watched('/readyz', 'elsewhere.example')).toEqual({ status: 200, body: { ready: true, checks } })
    const here = await (await fetch(at('/readyz'))).json()
    expect(here.checks[0]).toEqual({ name: 'database', ok: true, sentence: 'The database answers.' })
  })

  it('has the number that a person was told, and nobody’s name, number, words or codes', async () => {
    const { folder, address } = set.app
    const note = { kind: 'note', text: 'Maria Beispiel is late, call +44 7700 900 123' }
    const file = `${folder}/log/${set.own}.ndjson`
    rmSync(file, { force: true })
    mkdirSync(file, { recursive: true })
    const { id, at: when, by } = entryBy({ person: 'cam', device: 'phone' })
    const entry = sending({ id, at: when, by, ...note })
    const refused = await post(at(`/api/shoots/${set.own}/log`), entry, set.headers.crew)
    const told = await refused.json()
    expect([refused.status, told.code, told.request]).toEqual([
      507,
      'disk-refused',
      refused.headers.get('x-request-id'),
    ])
    const document = { title: 'Grill Night', people: [{ id: 'x', name: 'Maria Beispiel', phone: '+44 7700 900 123' }] }
    const wrong = await post(at('/api/shoots?q=Beispiel'), { writeId: 'log-0001', document }, set.headers.owner)
    expect(wrong.status).toBe(422)

    const lines = set.app
      .said()
      .split('\n')
      .filter((line) => line.startsWith('{'))
    const said = lines.map((line) => JSON.parse(line))
    expect(said.filter(({ request }) => request === told.request)).toMatchObject([
      { event: 'not-done', code: 'disk-refused' },
      { event: 'request', route: '/api/shoots/[id]/log', method: 'POST', status: 507 },
    ])
    const known = new Set(['program', 'unknown', ...ROUTES.map(({ path }) => path)])
    const requests = said.filter(({ event }) => event === 'request')
    expect(requests.length).toBeGreaterThan(8)
    expect(requests.filter(({ route }) => !known.has(route))).toEqual([])
    const secrets = ALL.flatMap((who) => Object.values(set.headers[who])).map((one) => one.split(/[= ]/).at(-1) ?? '')
    const calendars = Object.values(set.calendars).map((path) => new URL(path, address).searchParams.toString())
    const theirs = ['Shoot-of', 'Grill', 'Beispiel', '7700', 'probe-1', 'four plain', ...secrets, ...calendars]
    const log = lines.join('\n')
    expect(theirs.filter((word) => word.length > 3 && log.includes(word))).toEqual([])
  })
})
