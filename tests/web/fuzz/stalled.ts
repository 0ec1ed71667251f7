import { send } from './send'
import type { World } from './world'

/** What the start command gives a request, and time to notice on a crowded machine. */
const BOUND_MS = 150_000

/** Lines on which a body is begun and never ended: each is told so and ended. */
export async function stalled(
  world: World,
  many: number,
): Promise<{ readonly faults: string[]; readonly longestMs: number }> {
  const who = Object.entries(world.headers.owner[0] ?? {}).map(([name, value]) => `${name}: ${value}\r\n`)
  const head = `POST /api/shoots HTTP/1.1\r\nhost: 127.0.0.1:${world.port}\r\n${who.join('')}content-type: application/json\r\ncontent-length: 1000\r\n\r\n`
  const raw = { head, pieces: [Buffer.from('{"writeId":')], end: 'whole', streams: false } as const
  const answers = await Promise.all(Array.from({ length: many }, () => send(world.port, raw, BOUND_MS)))
  return {
    faults: answers.flatMap(({ outcome, status }) =>
      outcome === 'answered' && status >= 400 && status < 500 ? [] : [`a body that never ends: ${outcome} ${status}`],
    ),
    longestMs: Math.max(...answers.map(({ tookMs }) => tookMs)),
  }
}
