/** What is written down about requests: a number for each, the slow ones, how many were turned away; all of them on demand. */
import { randomBytes } from 'node:crypto'
import { inRequest, say } from '../data/log-line.mjs'

const SLOW_MS = 1000
const COUNT_MS = 60_000
/** Letters and digits alone, so that nothing can be written into a log by it. */
const PLAIN = /^[\w.-]{8,64}$/
const everyOne = () => process.env.EMBERSLATE_LOG?.trim() === 'requests'

/** Without letters that are taken for others, in two halves: a person reads it out. */
const LETTERS = '0123456789abcdefghjkmnpqrstvwxyz'
function newNumber() {
  const ten = Array.from(randomBytes(10), (byte) => LETTERS[byte & 31]).join('')
  return `${ten.slice(0, 5)}-${ten.slice(5)}`
}

/** A proxy that was announced may have numbered the request already; nobody else may choose what the log says. */
const numberOf = ({ headers }, proxied) => {
  const given = headers['x-request-id']
  return proxied && PLAIN.test(given ?? '') ? given : newNumber()
}

const refused = new Map()
export function tellRefused() {
  if (refused.size > 0) say('warn', 'turned-away', Object.fromEntries(refused))
  refused.clear()
}
setInterval(tellRefused, COUNT_MS).unref()

/** Streams are long, not slow; and the first who asks whether we are ready waits for the database to open. */
const mayTakeLong = (response, route) =>
  route === '/readyz' || String(response.getHeader('content-type')).startsWith('text/event-stream')

function tell({ method, socket }, response, { note, began, bytesBefore }) {
  if (note.refused) refused.set(note.refused, (refused.get(note.refused) ?? 0) + 1)
  const ms = Math.round(performance.now() - began)
  const slow = ms > SLOW_MS && !mayTakeLong(response, note.route)
  if (!slow && !everyOne()) return
  const bytes = Math.max(0, (socket?.bytesWritten ?? 0) - bytesBefore)
  const facts = { method, route: note.route ?? 'unknown', status: response.statusCode, ms, bytes }
  inRequest(note, () => say(slow ? 'warn' : 'info', slow ? 'slow-request' : 'request', facts))
}

/** Answers a request under its number, which the answer's header has too, and tells what became of it. */
export function numbered(request, response, { proxied, answer }) {
  const note = { id: numberOf(request, proxied) }
  const seen = { note, began: performance.now(), bytesBefore: request.socket.bytesWritten }
  request.headers['x-request-id'] = note.id
  response.setHeader('x-request-id', note.id)
  response.once('close', () => tell(request, response, seen))
  inRequest(note, () => answer(request, response))
}
