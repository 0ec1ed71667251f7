import { BORDER, type BorderError } from '@/lib/data/border-error'

const HEADERS = { 'content-type': 'application/problem+json' }

/** A refusal of the border's table as an RFC 9457 document. `problems` holds each fault with its JSON pointer. */
export function problemDocument({ code, status, message, detail }: BorderError): Response {
  const problems = detail.problems ?? (detail.pointer ? [{ pointer: detail.pointer, sentence: message }] : [])
  const version = detail.version === undefined ? {} : { version: detail.version }
  const title = BORDER[code][1]
  const body = { type: `/api/openapi.json#${code}`, title, status, detail: message, code, problems, ...version }
  const wait = detail.retryAfterS === undefined ? undefined : { 'retry-after': String(detail.retryAfterS) }
  return Response.json(body, { status, headers: { ...HEADERS, ...wait } })
}

/** A fault of ours: nothing about it leaves the terminal but that it happened. */
export function brokenDocument(): Response {
  const detail = 'Something broke in Emberslate itself; the terminal says what. Nothing was changed.'
  const body = { type: 'about:blank', title: 'Broken', status: 500, detail, code: 'broken', problems: [] }
  return Response.json(body, { status: 500, headers: HEADERS })
}
