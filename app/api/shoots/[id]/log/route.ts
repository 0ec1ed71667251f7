import { appendLog } from '@/lib/data/append-log'
import { logFaults } from '@/lib/data/door/may-log'
import { visitorOf } from '@/lib/data/door/visitor'
import { loadLog, requireShoot } from '@/lib/data/load-log'
import { whenText } from '@/lib/log/fields'
import { liveDay } from '../../../../live/live-days'
import { answer, readBody } from '../../../border'
import { lineText, readSending, readSince, refuseIfAllAre } from './read-sending'

export const dynamic = 'force-dynamic'

/** Keeps a batch of log entries; each is answered by its id. The same entry sent twice is kept once. */
export const POST = (request: Request, { params }: { params: Promise<{ id: string }> }) =>
  answer(async () => {
    const { id } = await params
    const { sent, entries } = readSending(await readBody(request))
    const visitor = await visitorOf(request.headers)
    const { received, entries: kept } = await appendLog(id, sent, entries, (entry) => logFaults(visitor, id, entry))
    refuseIfAllAre(kept)
    // From now on somebody forecasts the day anew, whether anybody watches or not.
    liveDay(id)
    return Response.json({ received: whenText(received), entries: kept })
  })

/** The log as NDJSON, whole or after a position; the position of its last line stands in a header. */
export const GET = (request: Request, { params }: { params: Promise<{ id: string }> }) =>
  answer(async () => {
    const { id } = await params
    await requireShoot(id)
    const since = readSince(new URL(request.url).searchParams.get('since'), '/since')
    const lines = await loadLog(id, since)
    return new Response(lines.map((line) => `${lineText(line)}\n`).join(''), {
      headers: {
        'content-type': 'application/x-ndjson; charset=utf-8',
        'content-disposition': `attachment; filename="log-${id}.ndjson"`,
        'log-position': String(lines.at(-1)?.position ?? since),
        'cache-control': 'no-store',
      },
    })
  })
