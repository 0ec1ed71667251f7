import { type NextRequest, NextResponse } from 'next/server'
import { problemDocument } from './app/api/problem-document'
import { BorderError } from './lib/data/border-error'

const OWN_HOST = /^(127\.0\.0\.1|localhost|\[::1\])(:\d{1,5})?$/i
const READS = new Set(['GET', 'HEAD', 'OPTIONS'])

/** True where a page of another site sends the request; a command line sends neither header. */
function comesFromElsewhere(request: NextRequest, host: string) {
  const site = request.headers.get('sec-fetch-site')
  if (site !== null && site !== 'same-origin' && site !== 'none') return true
  const origin = request.headers.get('origin')
  return origin !== null && origin !== `http://${host}`
}

/**
 * Emberslate answers on this computer only. A foreign Host header means that another site's name was pointed here
 * (DNS rebinding); a write from a foreign page means that it uses this browser to reach us. Both are refused.
 */
export function proxy(request: NextRequest) {
  const host = request.headers.get('host') ?? ''
  if (!OWN_HOST.test(host)) return problemDocument(new BorderError('foreign-host'))
  if (!READS.has(request.method) && comesFromElsewhere(request, host))
    return problemDocument(new BorderError('foreign-origin'))
  return NextResponse.next()
}
