/** What Node would refuse without a word, or Next cannot take, refused as everything else is: by a problem document (RFC 9457). */
import { STATUS_CODES } from 'node:http'
import { EARLY } from '../data/door/early-refusals.mjs'

/** How long a whole request may take to come in (8 MB on the slowest line that is worth waiting for), and its head, also of who connects and says nothing. [estimate] */
export const LINE = { requestTimeout: 120_000, headersTimeout: 20_000, connectionsCheckingInterval: 5000 }
const METHODS = 'GET, HEAD, POST, PUT, DELETE, OPTIONS'
const KNOWN = new Set(METHODS.split(', '))
const CODES = { HPE_HEADER_OVERFLOW: 'long-head', ERR_HTTP_REQUEST_TIMEOUT: 'too-slow' }

/** Until the app says more: Next itself answers some addresses before the app is asked. */
const GUARDED = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'content-security-policy': "default-src 'none'",
}

function documentOf(code) {
  const [status, sentence] = EARLY[code]
  const problems = status === 400 ? [{ pointer: '', sentence }] : []
  const type = `/api/openapi.json#${code}`
  const body = JSON.stringify({ type, title: sentence, status, detail: sentence, code, problems })
  const headers = {
    'content-type': 'application/problem+json',
    'content-length': String(Buffer.byteLength(body)),
    ...GUARDED,
    connection: 'close',
    ...(code === 'wrong-method' ? { allow: METHODS } : {}),
  }
  return { status, headers, body }
}

/** For a line on which nothing was understood. */
export function endLine(socket, code) {
  socket.on('error', () => {})
  // What an answer has begun on cannot take another.
  if (!socket.writable || socket.bytesWritten > 0) return socket.destroy()
  const { status, headers, body } = documentOf(code)
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`)
  socket.end(`HTTP/1.1 ${status} ${STATUS_CODES[status]}\r\n${lines.join('')}\r\n${body}`, () => socket.destroy())
}

/** An ending that Next takes for its own, and off, before it asks the app. */
const NEXTS_OWN = /^\/api\/[^?]*\.rsc(\?|$)/
function strangeness(method, url) {
  if (!KNOWN.has(method)) return 'wrong-method'
  // Next would send who writes a whole address on to it, wherever it leads.
  if (!url.startsWith('/')) return 'bad-request'
  return NEXTS_OWN.test(url) ? 'no-such-route' : null
}

/** Answers a request that no route could take; false where it may go on, with what guards every answer. */
export function refusedEarly({ method, url }, response) {
  for (const [name, value] of Object.entries(GUARDED)) response.setHeader(name, value)
  const code = strangeness(method, url)
  if (code === null) return false
  const { status, headers, body } = documentOf(code)
  response.writeHead(status, headers).end(body)
  return true
}

export function refuseUnread(server, answer) {
  server.on('clientError', (fault, socket) => endLine(socket, CODES[fault.code] ?? 'bad-request'))
  // Whatever else is expected of us, the answer says what came of it.
  server.on('checkExpectation', answer)
}
