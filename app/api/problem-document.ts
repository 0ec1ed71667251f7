import { BORDER, type BorderError } from '@/lib/data/border-error'
import { requestId, say } from '@/lib/data/say'
import type { Problem } from '@/lib/refusals'

const HEADERS = { 'content-type': 'application/problem+json' }

/** A refusal of the border's table as an RFC 9457 document. `problems` holds each fault with its JSON pointer. */
export function problemDocument({ code, status, message, detail }: BorderError): Response {
  const problems = detail.problems ?? placed(status, message, detail.pointer)
  const version = detail.version === undefined ? {} : { version: detail.version }
  const title = BORDER[code][1]
  const more = { ...version, ...(status < 500 ? {} : numbered(code)) }
  const body = { type: `/api/openapi.json#${code}`, title, status, detail: message, code, problems, ...more }
  const wait = detail.retryAfterS === undefined ? undefined : { 'retry-after': String(detail.retryAfterS) }
  const allow = detail.allow === undefined ? undefined : { allow: detail.allow }
  return Response.json(body, { status, headers: { ...HEADERS, ...wait, ...allow } })
}

/** Refusals of what was sent, and not of who sent it or of what there is: each has a place, the whole where no part is named. */
const OF_WHAT_WAS_SENT = new Set([400, 413, 415, 422])
const placed = (status: number, sentence: string, pointer?: string): readonly Problem[] =>
  pointer !== undefined || OF_WHAT_WAS_SENT.has(status) ? [{ pointer: pointer ?? '', sentence }] : []

/** The number to tell whoever runs the server: the log has it too. */
function numbered(code: string) {
  const request = requestId()
  say('warn', 'not-done', { code })
  return request === null ? {} : { request }
}

/** A fault of ours: nothing about it leaves the terminal but that it happened. */
export function brokenDocument(): Response {
  const request = requestId()
  const where = request ? `the terminal says what, under the number ${request}` : 'the terminal says what'
  const detail = `Something broke in Emberslate itself; ${where}. Nothing was changed.`
  const more = request ? { request } : {}
  const body = { type: 'about:blank', title: 'Broken', status: 500, detail, code: 'broken', problems: [], ...more }
  return Response.json(body, { status: 500, headers: HEADERS })
}
