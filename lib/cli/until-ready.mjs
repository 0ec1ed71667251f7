/** What the start command answers before the app can, and how it knows that the app can. */
import { PLAIN_POLICY, plainPage } from '../data/plain-page.mjs'
import { Unready } from './make-ready.mjs'

const OPEN_MS = 60_000
const AGAIN_MS = 250
/** As long as most starts take. */
const STARTING_S = 5
/** Without these no page comes together; the other checks are told, and the app serves what it can. */
const NEEDED = new Set(['database', 'migrations'])

/** The process lives, and is not ready: what watches the server should wait and not restart it. */
export function starting({ url }, response) {
  const path = String(url).split('?', 1)[0]
  const json = (status, body) =>
    response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body))
  if (path === '/healthz') return json(200, { ok: true })
  if (path === '/readyz') return json(503, { ready: false, checks: [{ name: 'started', ok: false }] })
  const html = {
    'content-type': 'text/html; charset=utf-8',
    'content-security-policy': PLAIN_POLICY,
    'retry-after': String(STARTING_S),
  }
  response.writeHead(503, html).end(plainPage('Emberslate is starting.', 'What was saved is safe.', STARTING_S))
}

async function checksAt(address) {
  const answer = await fetch(`${address}/readyz`, { signal: AbortSignal.timeout(OPEN_MS) })
  return (await answer.json()).checks.filter(({ ok }) => !ok)
}

/** Waits until a page can answer; gives the sentences of what else is amiss. Throws where the database does not open. */
export async function untilReady(address, { openMs = OPEN_MS } = {}) {
  const until = Date.now() + openMs
  for (;;) {
    const failed = await checksAt(address).catch(() => [{ name: 'database' }])
    const sentences = failed.map(({ name, sentence }) => sentence ?? `Not ready: ${name}.`)
    if (!failed.some(({ name }) => NEEDED.has(name))) return sentences
    if (Date.now() > until) throw new Unready(`The database did not open in a minute. ${sentences.join(' ')}`)
    await new Promise((resolve) => setTimeout(resolve, AGAIN_MS))
  }
}
