import { randomBytes } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { setTimeout } from 'node:timers/promises'
import { entryId } from '../log/entry-id'
import { whenText } from '../log/fields'
import { instant } from '../units'

/** A started app: where it answers, and its process. */
export type Server = { readonly address: string; readonly pid: number }

/** What many listeners heard of a reading each second. */
export interface Heard {
  readonly listeners: number
  readonly readings: number
  /** Of listeners times readings. */
  readonly notDelivered: number
  readonly doubled: number
  readonly p50Ms: number
  readonly p99Ms: number
  readonly worstMs: number
  /** Of the server, after the first tenth and at the end. */
  readonly memoryStartMb: number
  readonly memoryEndMb: number
}

const SETTLE_MS = 2000
const memoryMb = (pid: number) =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? Number.NaN) / 1024

/** Listens `listeners` times while a reading comes each second for `seconds`; the time is from sending to each hearing. */
export async function hearAll(app: Server, listeners: number, seconds: number): Promise<Heard> {
  const { shoots } = (await (await fetch(`${app.address}/api/shoots`)).json()) as { shoots: { id: string }[] }
  const path = `${app.address}/api/shoots/${shoots[0]?.id}`
  const sentAt = new Map<string, number>()
  const heard = Array.from({ length: listeners }, () => new Map<string, number>())
  const took: number[] = []
  const gone = new AbortController()
  const hear = async (own: Map<string, number>) => {
    const response = await fetch(`${path}/events`, { signal: gone.signal })
    if (!response.ok || !response.body) throw new Error(`A listener was refused: ${response.status}`)
    void read(response.body, (id) => {
      own.set(id, (own.get(id) ?? 0) + 1)
      took.push(performance.now() - (sentAt.get(id) ?? Number.NaN))
    })
  }
  await Promise.all(heard.map(hear))
  let memoryStartMb = memoryMb(app.pid)
  for (let second = 0; second < seconds; second++) {
    const next = setTimeout(1000)
    await sendReading(path, sentAt, second)
    if (second === Math.floor(seconds / 10)) memoryStartMb = memoryMb(app.pid)
    await next
  }
  await setTimeout(SETTLE_MS)
  const memoryEndMb = memoryMb(app.pid)
  gone.abort()
  const counts = heard.flatMap((own) => [...sentAt.keys()].map((id) => own.get(id) ?? 0))
  took.sort((a, b) => a - b)
  const at = (share: number) =>
    Math.round(took[Math.min(took.length - 1, Math.floor(share * took.length))] ?? Number.NaN)
  return {
    listeners,
    readings: seconds,
    notDelivered: counts.filter((count) => count === 0).length,
    doubled: counts.filter((count) => count > 1).length,
    p50Ms: at(0.5),
    p99Ms: at(0.99),
    worstMs: at(1),
    memoryStartMb: Math.round(memoryStartMb),
    memoryEndMb: Math.round(memoryEndMb),
  }
}

async function sendReading(path: string, sentAt: Map<string, number>, second: number): Promise<void> {
  const now = instant(Date.now())
  const id = entryId(now, randomBytes(10))
  const entry = {
    id,
    at: whenText(now),
    by: { device: 'probe-1' },
    kind: 'reading',
    cook: 'hero',
    sensor: 'core',
    temp: `${4 + second / 60} °C`,
  }
  sentAt.set(id, performance.now())
  const response = await fetch(`${path}/log`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ sent: whenText(now), entries: [entry] }),
  })
  if (!response.ok) throw new Error(await response.text())
}

async function read(body: ReadableStream<Uint8Array>, onEntry: (id: string) => void): Promise<void> {
  const decoder = new TextDecoder()
  let rest = ''
  try {
    // Node's streams can be read so; the browser's types do not know it.
    for await (const bytes of body as unknown as AsyncIterable<Uint8Array>) {
      rest += decoder.decode(bytes, { stream: true })
      const events = rest.split('\n\n')
      rest = events.pop() ?? ''
      for (const event of events) {
        const id = /"id":"([0-9A-Z]{26})"/.exec(event)?.[1]
        if (id) onEntry(id)
      }
    }
  } catch {
    // The end: we hung up.
  }
}
