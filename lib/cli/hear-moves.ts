import { randomBytes } from 'node:crypto'
import { setTimeout } from 'node:timers/promises'
import { entryId } from '../log/entry-id'
import { whenText } from '../log/fields'
import { readLog } from '../log/ndjson'
import { reduce } from '../session/reduce'
import { type LiveForecast, openSession, type Session, type SessionEvent } from '../session/session'
import type { SessionDay } from '../session/session-day'
import { type Instant, instant } from '../units'
import type { Server } from './hear-all'

/** Readings that come closer than this share a forecast; each of these is one that moves calls by itself. */
const APART_MS = 2500
const WAIT_MS = 20_000
const MINUTE_MS = 60_000
const nowMs = (): Instant => instant(Date.now())

/**
 * How long it takes, `times` over, from one phone's sending a reading until a call has moved on another: ms. The roast
 * has been on for an hour; each time its probe is put elsewhere and reads much more, or less, than before.
 */
export async function hearMoves(app: Server, times: number, shoot?: string): Promise<number[]> {
  const { shoots } = (await (await fetch(`${app.address}/api/shoots`)).json()) as { shoots: { id: string }[] }
  const path = `${app.address}/api/shoots/${shoot ?? shoots[0]?.id}`
  const other = new OtherPhone()
  await other.open(path)
  await send(path, [{ kind: 'mark', cook: 'hero', moment: 'meat-on', agoMs: 60 * MINUTE_MS }])
  await setTimeout(APART_MS)
  const took: number[] = []
  for (let i = 0; i < times; i++) {
    const moved = other.moved()
    const sentAt = performance.now()
    await send(path, [
      { kind: 'probe-check', cook: 'hero', sensor: 'core', found: 'moved', agoMs: 1000 },
      { kind: 'reading', cook: 'hero', sensor: 'core', temp: `${i % 2 ? 12 : 30} °C` },
    ])
    const at = await Promise.race([moved, setTimeout(WAIT_MS, null, { ref: false })])
    if (at === null) throw new Error(`No call moved within ${WAIT_MS / 1000} s of a reading.`)
    took.push(at - sentAt)
    await setTimeout(APART_MS)
  }
  other.close()
  return took
}

async function send(path: string, drafts: readonly ({ kind: string; agoMs?: number } & Record<string, unknown>)[]) {
  const sent = nowMs()
  const entries = drafts.map(({ agoMs = 0, ...rest }) => {
    const at = instant(sent - agoMs)
    return { id: entryId(at, randomBytes(10)), at: whenText(at), by: { device: 'phone-a' }, ...rest }
  })
  const response = await fetch(`${path}/log`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ sent: whenText(sent), entries }),
  })
  if (!response.ok) throw new Error(await response.text())
}

/** A phone that only listens: the rule book on what the server tells it. */
class OtherPhone {
  readonly #gone = new AbortController()
  #session: Session | undefined
  #waiting: ((atMs: number) => void)[] = []

  async open(path: string): Promise<void> {
    const { day } = (await (await fetch(`${path}/set-day`)).json()) as { day: SessionDay }
    this.#session = openSession(day)
    const response = await fetch(`${path}/events`, { signal: this.#gone.signal })
    if (!response.body) throw new Error('no events')
    void this.#read(response.body)
  }
  close = () => this.#gone.abort()
  /** When the next call moves. */
  moved = () => new Promise<number>((resolve) => this.#waiting.push(resolve))

  async #read(body: ReadableStream<Uint8Array>): Promise<void> {
    const decoder = new TextDecoder()
    let rest = ''
    try {
      // Node's streams can be read so; the browser's types do not know it.
      for await (const bytes of body as unknown as AsyncIterable<Uint8Array>) {
        rest += decoder.decode(bytes, { stream: true })
        const events = rest.split('\n\n')
        rest = events.pop() ?? ''
        for (const event of events) this.#hear(event)
      }
    } catch {
      // The end: we hung up.
    }
  }
  #hear(text: string) {
    const name = /^event: (.*)$/m.exec(text)?.[1]
    const data = /^data: (.*)$/m.exec(text)?.[1]
    if (!data || !this.#session) return
    for (const event of eventsOf(name, data)) {
      const [next, effects] = reduce(this.#session, event)
      this.#session = next
      if (effects.some((effect) => effect.do === 'move-call'))
        for (const resolve of this.#waiting.splice(0)) resolve(performance.now())
    }
  }
}

function eventsOf(name: string | undefined, data: string): SessionEvent[] {
  if (name === 'entry')
    return readLog(data).lines.map((line) => ({ id: line.entry.id, at: nowMs(), kind: 'line', line }))
  if (name !== 'forecast') return []
  const { id, at, forecast } = JSON.parse(data) as { id: string; at: Instant; forecast: LiveForecast }
  return [{ id, at, kind: 'forecast', forecast }]
}
