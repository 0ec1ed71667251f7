import { randomBytes } from 'node:crypto'
import { type NextRequest, NextResponse } from 'next/server'
import { brokenDocument, problemDocument } from './app/api/problem-document'
import { AGAIN_AFTER_S, isAway } from './lib/data/away'
import { type BorderCode, BorderError } from './lib/data/border-error'
import { isAddress, mayDo, methodsAt, rowOf, type Verdict } from './lib/data/door/access'
import { countWrite } from './lib/data/door/door-limits'
import { isKnownHost } from './lib/data/door/known-host'
import { addSecurityHeaders, contentPolicy } from './lib/data/door/security-headers'
import { isSecure, meet, renewedCookie } from './lib/data/door/visitor'
import { plainPage } from './lib/data/plain-page.mjs'
import { noteRefusal, noteRoute, sayFault } from './lib/data/say'

const READS = new Set(['GET', 'HEAD', 'OPTIONS'])
/** The program itself, the same for everybody; nothing of a shoot is in it. */
const PROGRAM =
  /^\/(_next\/static\/|[\w-]+\.(js|webmanifest|ico|png|svg)$|licences\.txt$|help\/[\w-]+\.webp$|(icons|sounds)\/[\w.-]+$)/
const DEVELOPMENT = process.env.NODE_ENV === 'development'
const NOT_HERE = '/nothing-here'
/** Asked by what watches the server, by address and without a cookie: they say nothing that is anybody's. */
const WATCHED = new Set(['/healthz', '/readyz'])

const originOf = (request: NextRequest, host: string) => `${isSecure(request.headers) ? 'https' : 'http'}://${host}`

/** True where a page of another site sends the request; a command line sends neither header. */
function comesFromElsewhere(request: NextRequest, host: string) {
  const site = request.headers.get('sec-fetch-site')
  if (site !== null && site !== 'same-origin' && site !== 'none') return true
  const origin = request.headers.get('origin')
  return origin !== null && origin !== originOf(request, host)
}

const isWatched = ({ method, nextUrl }: NextRequest) => READS.has(method) && WATCHED.has(nextUrl.pathname)
const isProgram = (request: NextRequest) => READS.has(request.method) && PROGRAM.test(request.nextUrl.pathname)

/** A page that somebody reads in a browser, and not an answer to a program. */
const isPage = (request: NextRequest) => READS.has(request.method) && !/^\/api(\/|$)/.test(request.nextUrl.pathname)

/** What no route would take; of pages Next knows more than the table. */
function refuseStrange(request: NextRequest): void {
  const { pathname } = request.nextUrl
  if (!isAddress(pathname)) throw new BorderError('bad-address')
  if (isPage(request) || rowOf(request.method, pathname)) return
  const methods = methodsAt(pathname)
  throw methods.length > 0
    ? new BorderError('wrong-method', { allow: methods.join(', ') })
    : new BorderError('no-such-route')
}

function turnAway(request: NextRequest, host: string, verdict: Exclude<Verdict, 'in'>): Response | URL {
  noteRefusal(verdict)
  if (!isPage(request)) return problemDocument(new BorderError(verdict satisfies BorderCode))
  if (verdict === 'not-found') return new URL(NOT_HERE, request.url)
  const door = new URL('/door', originOf(request, host))
  door.searchParams.set(verdict === 'may-not' ? 'beyond' : 'to', request.nextUrl.pathname)
  return NextResponse.redirect(door, 307)
}

/** The page or route, told which scripts are its own; Next reads the nonce from this header. */
function goOn(request: NextRequest, policy: string, elsewhere?: URL): NextResponse {
  const headers = new Headers(request.headers)
  headers.set('content-security-policy', policy)
  return elsewhere
    ? NextResponse.rewrite(elsewhere, { request: { headers } })
    : NextResponse.next({ request: { headers } })
}

async function answer(request: NextRequest, policy: string): Promise<Response> {
  noteRoute(isProgram(request) ? 'program' : (rowOf(request.method, request.nextUrl.pathname)?.row.path ?? 'unknown'))
  if (isWatched(request)) return goOn(request, policy)
  const host = request.headers.get('host') ?? ''
  if (!isKnownHost(host)) throw new BorderError('foreign-host')
  const writes = !READS.has(request.method)
  if (writes && comesFromElsewhere(request, host)) throw new BorderError('foreign-origin')
  const { pathname } = request.nextUrl
  if (isProgram(request)) return NextResponse.next()
  refuseStrange(request)
  const met = await meet(request.headers, request.nextUrl)
  const verdict = mayDo(met.visitor, request.method, pathname)
  const turned = verdict === 'in' ? undefined : turnAway(request, host, verdict)
  if (turned instanceof Response) return turned
  if (writes) countWrite(met.visitor.by)
  const response = goOn(request, policy, turned)
  const cookie = await renewedCookie(request.headers, met)
  if (cookie) response.headers.append('set-cookie', cookie)
  return response
}

const HTML = { 'content-type': 'text/html; charset=utf-8' }
/** Who somebody is cannot be known just now: the page comes by itself when it can. */
const tryAgain = ({ status, message }: BorderError) =>
  new Response(plainPage('The database does not answer.', message, AGAIN_AFTER_S), {
    status,
    headers: { ...HTML, 'retry-after': `${AGAIN_AFTER_S}` },
  })

/** What the door refuses: a page to a person, a document to a program. */
function refused(request: NextRequest, refusal: BorderError): Response {
  const isRead = isPage(request) && request.headers.get('accept')?.includes('text/html')
  if (!isRead) return problemDocument(refusal)
  return new Response(plainPage('This does not open.', refusal.message), { status: refusal.status, headers: HTML })
}

/**
 * The door: every request comes through here. A foreign Host header means that another site's name was pointed here (DNS
 * rebinding); a write from a foreign page means that it uses this browser to reach us; both are refused. What the visitor
 * may do stands in the table of lib/data/door/access.ts.
 */
export async function proxy(request: NextRequest): Promise<Response> {
  const nonce = isProgram(request) ? null : randomBytes(16).toString('base64')
  const policy = contentPolicy(nonce, DEVELOPMENT)
  const response = await answer(request, policy).catch((fault) => {
    const refusal = isAway(fault) ? new BorderError('database-away', { retryAfterS: AGAIN_AFTER_S }) : fault
    if (!(refusal instanceof BorderError)) {
      sayFault('door-broke', fault)
      return brokenDocument()
    }
    noteRefusal(refusal.code)
    return refusal === fault || !isPage(request) ? refused(request, refusal) : tryAgain(refusal)
  })
  addSecurityHeaders(response.headers, policy)
  return response
}
