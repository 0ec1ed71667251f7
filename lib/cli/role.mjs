/** What a process is started for: everything, pages without the work behind them, or that work alone. */
import { readFileSync } from 'node:fs'
import { Unready } from './make-ready.mjs'

const KNOWN = ['--crew', '--worker', '--pages']

/** Reads the words after `npm start --`; those that do not go together are refused in a sentence. */
export function askedFor(words, env = process.env) {
  const strange = words.find((word) => !KNOWN.includes(word))
  if (strange)
    throw new Unready(`"${strange}" is not known here. Write npm start, or npm start -- --crew to let the crew in.`)
  const [crew, worker, pages] = KNOWN.map((word) => words.includes(word))
  if (worker && (crew || pages))
    throw new Unready('--worker serves no pages and lets nobody in. Write it alone: npm start -- --worker')
  const shared = Boolean(env.DATABASE_URL?.trim())
  if (worker && !shared)
    throw new Unready('A worker takes its jobs from a PostgreSQL that it shares with the app. Set DATABASE_URL to it.')
  if (pages && !shared)
    throw new Unready(
      '--pages leaves the work to workers that share a PostgreSQL. Set DATABASE_URL to it, or leave --pages off.',
    )
  const proxied = crew && env.EMBERSLATE_PROXY?.trim() === '1'
  // Without one phones would come over a plain line, where a browser keeps nothing for when they are cut off.
  if (crew && shared && !proxied)
    throw new Unready(
      'With DATABASE_URL the crew comes through a reverse proxy, which has the certificate: set EMBERSLATE_PROXY=1 and EMBERSLATE_NAMES. Without a proxy leave DATABASE_URL off: a folder then keeps everything.',
    )
  return { crew, proxied, role: worker ? 'worker' : pages ? 'pages' : 'all' }
}

/** A worker tells whoever watches it how it is, and nobody anything else. */
export const onlyHealth = (handle) => (request, response) => {
  const path = String(request.url).split('?', 1)[0]
  if (path === '/healthz' || path === '/readyz') return handle(request, response)
  response.writeHead(404, { 'content-type': 'text/plain' }).end('This process takes jobs and has no pages.')
}

/** Which sources the build is of: those who share a PostgreSQL only answer questions of their own. */
export const builtFrom = () => readFileSync('.next/emberslate', 'utf8').slice(0, 16)
