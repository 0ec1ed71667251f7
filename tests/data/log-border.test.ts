import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { describeApi } from '../../app/api/describe-api'
import { GET as events } from '../../app/api/shoots/[id]/events/route'
import { GET, POST } from '../../app/api/shoots/[id]/log/route'
import { createShoot } from '../../lib/data/create-shoot'
import { listenerCount } from '../../lib/data/listeners'
import { readLog } from '../../lib/log/ndjson'
import { mark, reading } from '../unit/log/lines'
import { closeAll, freshDatabase } from './real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
/** The server's own live day goes on listening. */
const LIVE_DAY = 1
let shoot: string
beforeEach(async () => {
  await freshDatabase()
  // Its live day outlives a test: each has a shoot of its own.
  const made = await createShoot(DOCUMENT, `write-${Date.now()}`)
  shoot = made.ok ? made.value.id : ''
})
afterEach(closeAll)

const at = (path: string, init?: RequestInit) => new Request(`http://127.0.0.1:3000/api/shoots/${shoot}/${path}`, init)
const params = { params: Promise.resolve({ id: '' }) }
const here = () => ({ params: Promise.resolve({ id: shoot }) })
const post = (body: unknown) => POST(at('log', { method: 'POST', body: JSON.stringify(body) }), here())
const SENT = '2027-05-15T12:00:00Z'
const documents = (count: number) => Array.from({ length: count }, (_, i) => reading(i, i).document)

/** Reads events until there are as many as wanted. */
async function hear(response: Response, count: number) {
  const reader = (response.body as ReadableStream<Uint8Array>).getReader()
  let said = ''
  const found = () => [...said.matchAll(/^id: (\d+)\nevent: entry\ndata: (.*)$/gm)]
  while (found().length < count) said += new TextDecoder().decode((await reader.read()).value)
  return { events: found().map(([, id, data]) => ({ id: Number(id), entry: JSON.parse(data as string) })), reader }
}

describe('the border of the slate log', () => {
  it('answers a batch by id and gives it back as lines with their receipts, whole or after a position', async () => {
    const [a, b] = documents(2)
    const posted = await post({ sent: SENT, entries: [a, b, { kind: 'mark' }] })
    expect(posted.status).toBe(200)
    expect((await posted.json()).entries.map((one: { became: string }) => one.became)).toEqual([
      'kept',
      'kept',
      'refused',
    ])
    const got = await GET(at('log'), here())
    expect([got.headers.get('content-type'), got.headers.get('log-position')]).toEqual([
      'application/x-ndjson; charset=utf-8',
      '2',
    ])
    const { lines, faults } = readLog(await got.text())
    expect(faults).toEqual([])
    expect(lines.map(({ document, receipt }) => [document, receipt?.sent])).toEqual([
      [a, Date.parse(SENT)],
      [b, Date.parse(SENT)],
    ])
    const rest = await GET(at('log?since=1'), here())
    expect(readLog(await rest.text()).lines).toHaveLength(1)
  })
  it.each([
    [{ entries: [] }, ['/sent', '/entries']],
    [{ sent: '12:00', entries: [mark(1, 'pull').document] }, ['/sent']],
    [{ sent: SENT, entries: [{ ...mark(1, 'pull').document, cook: 7 }] }, ['/entries/0/cook']],
  ])('refuses %j with a sentence at each fault', async (body, pointers) => {
    const refused = await post(body)
    const { code, problems } = await refused.json()
    expect([refused.status, code]).toEqual([422, 'log-invalid'])
    expect(problems.map((p: { pointer: string }) => p.pointer)).toEqual(pointers)
  })
  it('knows no log of a shoot that is not there, and no position that is none', async () => {
    expect((await GET(at('log'), params)).status).toBe(404)
    expect((await events(at('events'), params)).status).toBe(404)
    expect((await GET(at('log?since=x'), here())).status).toBe(422)
  })
  it('is described with every kind of entry, and the status of every refusal', () => {
    const api = describeApi()
    expect(Object.keys(api.paths['/api/shoots/{id}/log'].post.responses)).toEqual(
      expect.arrayContaining(['200', '404', '413', '422', '507']),
    )
    expect(JSON.stringify(api.components.schemas.Entry)).toContain('what-if-adopted')
  })
})

describe('the events of the slate log', () => {
  it('tell what is kept, then what comes, each once and in order, and let go when the listener goes', async () => {
    const all = documents(6)
    await post({ sent: SENT, entries: all.slice(0, 2) })
    const gone = new AbortController()
    const response = await events(at('events', { signal: gone.signal }), here())
    expect(response.headers.get('content-type')).toContain('text/event-stream')
    await Promise.all(all.slice(2).map((entry) => post({ sent: SENT, entries: [entry, all[0]] })))
    const { events: heard, reader } = await hear(response, 6)
    expect(heard.map(({ id }) => id)).toEqual([1, 2, 3, 4, 5, 6])
    expect(new Set(heard.map(({ entry }) => entry.id)).size).toBe(6)
    expect(heard[0]?.entry).toMatchObject({ sent: new Date(SENT).toISOString(), received: expect.any(String) })
    gone.abort()
    expect((await reader.read()).done).toBe(true)
    await expect.poll(() => listenerCount(shoot)).toBe(LIVE_DAY)
  })
  it('resume after the last that was heard', async () => {
    await post({ sent: SENT, entries: documents(3) })
    const response = await events(at('events?since=0', { headers: { 'last-event-id': '2' } }), here())
    const { events: heard, reader } = await hear(response, 1)
    expect(heard.map(({ id }) => id)).toEqual([3])
    await reader.cancel()
    await expect.poll(() => listenerCount(shoot)).toBe(LIVE_DAY)
  })
})
