import type { Opened } from '@/lib/data/door/sessions'
import { cookieOf } from '@/lib/data/door/visitor'

/** Signs this browser in, or out. */
export const signedIn = (request: Request, opened: Opened | null, body: object = {}) =>
  Response.json(body, {
    headers: { 'set-cookie': cookieOf(request.headers, opened), 'cache-control': 'no-store' },
  })
