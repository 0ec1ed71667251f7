/** What the start command answers before the app can, and how it knows that the app can. */
import { Unready } from './make-ready.mjs'

const OPEN_MS = 60_000
const AGAIN_MS = 250
/** Without these no page comes together; the other checks are told, and the app serves what it can. */
const NEEDED = new Set(['database', 'migrations'])

/** The process lives, and is not ready: what watches the server should wait and not restart it. */
export function starting({ url }, response) {
  const path = String(url).split('?', 1)[0]
  const json = (status, body) =>
    response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body))
  if (path === '/healthz') return json(200, { ok: true })
  if (path === '/readyz') return json(503, { ready: false, checks: [{ name: 'started', ok: false }] })
  response.writeHead(503, { 'retry-after': '5' }).end('Emberslate is starting.')
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
