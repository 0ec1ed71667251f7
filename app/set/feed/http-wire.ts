import type { EntryDocument } from '@/lib/log/entry'
import { whenText } from '@/lib/log/entry-words'
import type { Problem } from '@/lib/refusals'
import { instant } from '@/lib/units'
import type { SetOpening } from '../set-feed'
import { eventReader } from './event-lines'
import { type Listener, OPEN_AGAIN, SERVER_AWAY, type SendAnswer, type Sent, type Wire } from './wire'

/** What `GET /api/me` says of who is signed in. */
type WhoAmI = { readonly person: { readonly shoot: string; readonly id: string } | null }

/** The server's border, over fetch: on any origin, and with the stream's heartbeat in sight. */
export function httpWire(shootId: string): Wire {
  const shoot = `/api/shoots/${encodeURIComponent(shootId)}`
  return {
    opening: async (signal) => {
      const response = await fetch(`${shoot}/set-day`, { signal, cache: 'no-store' })
      if (!response.ok) throw new Error(`set-day ${response.status}`)
      return (await response.json()) as SetOpening
    },
    whoAmI: async (signal) => {
      const response = await fetch(`/api/me?shoot=${encodeURIComponent(shootId)}`, { signal, cache: 'no-store' })
      const me = response.ok ? ((await response.json()) as WhoAmI) : null
      return me?.person?.shoot === shootId ? me.person.id : null
    },
    listen: (since, listener, signal) => listenTo(`${shoot}/events`, since, listener, signal),
    send: async (sent, entries, signal) => {
      const body = JSON.stringify({ sent: whenText(instant(sent)), entries })
      const headers = { 'content-type': 'application/json' }
      return answerOf(await fetch(`${shoot}/log`, { method: 'POST', headers, body, signal }), entries)
    },
  }
}

const SIGNED_OUT = 401
const AWAY = 503
const wordsFor = (status: number) => (status === SIGNED_OUT ? OPEN_AGAIN : status === AWAY ? SERVER_AWAY : undefined)
function waitOf({ headers }: Response): number | null {
  const after = Number(headers.get('retry-after'))
  return after > 0 ? after * 1000 : null
}

/** One try to hear a shoot's events, until the stream ends or is cut. */
export async function listenTo(path: string, since: number, listener: Listener, signal: AbortSignal): Promise<void> {
  const headers = { accept: 'text/event-stream', 'last-event-id': String(since) }
  const response = await fetch(path, { headers, signal, cache: 'no-store' })
  const words = wordsFor(response.status)
  if (words) listener.notNow(words, waitOf(response))
  if (!response.ok || !response.body) throw new Error(`events ${response.status}`)
  listener.opened()
  const read = eventReader(
    (heard) => listener.event(heard),
    () => listener.beat(),
  )
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader()
  for (let part = await reader.read(); !part.done; part = await reader.read()) read(part.value)
}

async function answerOf(response: Response, entries: readonly EntryDocument[]): Promise<SendAnswer> {
  const body = (await response.json().catch(() => ({}))) as {
    received?: string
    entries?: readonly Sent[]
    problems?: readonly Problem[]
    detail?: string
    title?: string
  }
  if (response.ok && body.entries?.length === entries.length)
    return { heard: 'kept', received: Date.parse(body.received ?? ''), entries: body.entries }
  const sentence = wordsFor(response.status) ?? body.detail ?? body.title ?? `The server answered ${response.status}.`
  if (response.status === 422 || response.status === 400)
    return { heard: 'refused', problems: body.problems ?? [], sentence }
  return { heard: 'not-now', sentence, waitMs: waitOf(response) }
}
