import 'server-only'
import { AGAIN_AFTER_S, isAway } from '@/lib/data/away'
import { BorderError } from '@/lib/data/border-error'
import { sayFault } from '@/lib/data/say'
import { jsonFault } from '@/lib/plan/json-fault'
import { LARGEST_BYTES, tooLarge } from '@/lib/plan/parse'
import type { Result } from '@/lib/refusals'
import { brokenDocument, problemDocument } from './problem-document'
import { readBytes } from './read-bytes'

/** Runs a route; what the border refuses becomes a problem document (RFC 9457), a fault of ours a plain 500. */
export async function answer(work: () => Promise<Response>): Promise<Response> {
  try {
    return await work()
  } catch (fault) {
    if (fault instanceof BorderError) return problemDocument(fault)
    if (isNextsNotFound(fault)) return problemDocument(new BorderError('not-found'))
    if (isAway(fault)) return problemDocument(new BorderError('database-away', { retryAfterS: AGAIN_AFTER_S }))
    sayFault('route-broke', fault)
    return brokenDocument()
  }
}

/** Files open a shoot as pages do, by what leaves a missing one to Next. */
const isNextsNotFound = (fault: unknown) => (fault as { digest?: unknown }).digest === 'NEXT_HTTP_ERROR_FALLBACK;404'

/** The value, or a refusal with every fault at its place. */
export function valueOrRefuse<T>(result: Result<T>): T {
  if (result.ok) return result.value
  throw new BorderError('invalid', { problems: result.problems })
}

const NOT_UTF8 = 'The body is not UTF-8. Send it as UTF-8, not compressed and without gaps.'
/** A letter that cannot be read is refused: put right in silence it would be another than was sent. */
async function readText(request: Request): Promise<string> {
  const bytes = await readBytes(
    request,
    LARGEST_BYTES,
    (many) => new BorderError('too-large', { sentence: tooLarge(many) }),
  )
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new BorderError('broken-json', { sentence: NOT_UTF8 })
  }
}

export type Body = Readonly<Record<string, unknown>>

/** The request's JSON object. Too much of it, or broken JSON, is refused with a sentence that says where. */
export async function readBody(request: Request): Promise<Body> {
  const text = await readText(request)
  const fault = jsonFault(text)
  if (fault) throw new BorderError('broken-json', { sentence: fault })
  const body: unknown = JSON.parse(text)
  if (typeof body !== 'object' || body === null || Array.isArray(body)) throw new BorderError('broken-json')
  return body as Body
}

export const writeIdOf = (body: Body) => (typeof body.writeId === 'string' ? body.writeId : '')

export function baseVersionOf(body: Body): number | undefined {
  if (body.baseVersion === undefined || Number.isInteger(body.baseVersion))
    return body.baseVersion as number | undefined
  const sentence = '"baseVersion" is the whole number of the version the change was made on.'
  throw new BorderError('invalid', { problems: [{ pointer: '/baseVersion', sentence }], sentence })
}
