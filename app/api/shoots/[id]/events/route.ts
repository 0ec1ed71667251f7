import { maySee } from '@/lib/data/door/access'
import { untilEnded } from '@/lib/data/door/session-ends'
import { visitorOf } from '@/lib/data/door/visitor'
import { requireShoot } from '@/lib/data/load-log'
import { answer } from '../../../border'
import { readSince } from '../log/read-sending'
import { logStream } from './stream'

export const dynamic = 'force-dynamic'

/** The log as it grows (server-sent events); resumes after `Last-Event-ID`, or after `?since=`. */
export const GET = (request: Request, { params }: { params: Promise<{ id: string }> }) =>
  answer(async () => {
    const { id } = await params
    await requireShoot(id)
    const resumed = request.headers.get('last-event-id')
    const since = readSince(
      resumed ?? new URL(request.url).searchParams.get('since'),
      resumed ? '/last-event-id' : '/since',
    )
    const headers = new Headers(request.headers)
    const { by } = await visitorOf(headers)
    const still = async () => {
      const now = await visitorOf(headers)
      return now.by === by && maySee(now, id)
    }
    return new Response(logStream(id, since, untilEnded(by, request.signal, still)), {
      headers: {
        'content-type': 'text/event-stream; charset=utf-8',
        // "no-transform": a proxy or the server's own gzip would hold events back.
        'cache-control': 'no-store, no-transform',
        'x-accel-buffering': 'no',
      },
    })
  })
