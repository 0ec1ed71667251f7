import { randomBytes } from 'node:crypto'
import { setTimeout } from 'node:timers/promises'
import { DEVICE_CLOCK } from '../../app/set/feed/device-clock'
import { Hearing } from '../../app/set/feed/hearing'
import { listenTo } from '../../app/set/feed/http-wire'
import { entryId } from '../../lib/log/entry-id'
import { whenText } from '../../lib/log/fields'
import { instant } from '../../lib/units'

/** A listener as a phone is one, by the phone's own code: what it heard, and when. */
export class Listener {
  readonly heardAt: number[] = []
  readonly ids: string[] = []
  /** Lines that were not the next one. */
  misplaced = 0
  cuts = 0
  forecasts: { id: string; at: number; hasCurves: boolean }[] = []
  readonly #hearing: Hearing

  constructor(address: string, shoot: string) {
    const wire = {
      listen: (since: number, listener: Parameters<typeof listenTo>[2], signal: AbortSignal) =>
        listenTo(`${address}/api/shoots/${shoot}/events`, since, listener, signal),
    }
    this.#hearing = new Hearing(wire, DEVICE_CLOCK, () => this.heardAt.length, {
      opened: () => {},
      beat: () => {},
      notNow: () => {},
      cut: () => {
        this.cuts++
      },
      event: ({ event, id, data }) => {
        if (event === 'entry') this.#take(Number(id), JSON.parse(data).id)
        if (event === 'forecast') this.#takeForecast(JSON.parse(data))
      },
    })
    void this.#hearing.run()
  }
  stop(): void {
    this.#hearing.stop()
  }
  #take(position: number, id: string): void {
    if (position !== this.heardAt.length + 1) this.misplaced++
    this.heardAt.push(Date.now())
    this.ids.push(id)
  }
  #takeForecast({ id, forecast }: { id: string; forecast: { lines?: object } }): void {
    this.forecasts.push({ id, at: Date.now(), hasCurves: Object.keys(forecast.lines ?? {}).length > 0 })
  }
}

/** What became of the writes; a write is sent again, to any of the addresses, until it is acknowledged. */
export class Writers {
  /** By entry: when it was acknowledged, of which shoot, where it stands. */
  readonly kept = new Map<string, { readonly shoot: string; readonly position: number; readonly at: number }>()
  readonly statuses = new Map<number | string, number>()
  #under = 0
  #made = 0
  #stopped = false

  constructor(
    readonly addresses: readonly string[],
    readonly shoots: readonly string[],
  ) {}

  /** So many new entries a second, whether or not earlier ones are acknowledged yet. */
  async run(perSecond: number, seconds: number): Promise<void> {
    const began = Date.now()
    for (let made = 0; made < perSecond * seconds && !this.#stopped; made++) {
      await setTimeout(Math.max(0, began + (made * 1000) / perSecond - Date.now()))
      void this.#write()
    }
  }
  /** When all are acknowledged; throws where that takes longer than `withinMs`. */
  async settled(withinMs: number): Promise<void> {
    for (const until = Date.now() + withinMs; this.#under > 0; await setTimeout(50))
      if (Date.now() > until) throw new Error(`${this.#under} writes are not acknowledged after ${withinMs} ms.`)
  }
  stop(): void {
    this.#stopped = true
  }

  async #write(): Promise<void> {
    this.#under++
    const n = this.#made++
    const shoot = this.shoots[n % this.shoots.length] as string
    const now = instant(Date.now())
    const entry = {
      id: entryId(now, randomBytes(10)),
      at: whenText(now),
      by: { device: 'probe-1' },
      ...(n % 5 === 0
        ? { kind: 'reading', cook: 'hero', sensor: 'core', temp: `${10 + (n % 400) / 10} °C` }
        : { kind: 'note', text: `note ${n}` }),
    }
    for (let tried = n; !this.#stopped; tried++) {
      const waitMs = await this.#send(this.addresses[tried % this.addresses.length] as string, shoot, entry)
      if (waitMs === null) break
      await setTimeout(waitMs)
    }
    this.#under--
  }
  /** Null where it is acknowledged, else how long to wait. */
  async #send(address: string, shoot: string, entry: { readonly id: string }): Promise<number | null> {
    try {
      const response = await fetch(`${address}/api/shoots/${shoot}/log`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ sent: whenText(instant(Date.now())), entries: [entry] }),
        signal: AbortSignal.timeout(15_000),
      })
      const body = await response.json()
      this.#count(response.status)
      const position = body.entries?.[0]?.position
      if (!response.ok || position === undefined)
        return Math.max(100, Number(response.headers.get('retry-after')) * 1000)
      this.kept.set(entry.id, { shoot, position, at: Date.now() })
      return null
    } catch (fault) {
      this.#count((fault as Error).name)
      return 500
    }
  }
  #count(what: number | string): void {
    this.statuses.set(what, (this.statuses.get(what) ?? 0) + 1)
  }
}

/** What is wrong with what was kept: an acknowledged entry that is not there once, at its position. */
export async function lossesOf(address: string, writers: Writers) {
  let [lost, doubled, moved, kept] = [0, 0, 0, 0]
  for (const shoot of writers.shoots) {
    const text = await (await fetch(`${address}/api/shoots/${shoot}/log`)).text()
    const ids = text
      .trimEnd()
      .split('\n')
      .filter(Boolean)
      .map((line) => JSON.parse(line).id as string)
    kept += ids.length
    doubled += ids.length - new Set(ids).size
    for (const [id, one] of writers.kept) {
      if (one.shoot !== shoot) continue
      const at = ids.indexOf(id)
      if (at < 0) lost++
      else if (at !== one.position - 1) moved++
    }
  }
  return { lost, doubled, moved, kept }
}

/** An outage, from the order to end to the answer that it is there again. */
export interface Outage {
  readonly from: number
  readonly to: number
}
/** What a listener waited for: after each outage for its first line, and for each acknowledged line (from the return, where it was away). */
export function waitsOf(listener: Listener, shoot: string, writers: Writers, outages: readonly Outage[]) {
  const waits: number[] = []
  for (const { shoot: of, position, at } of writers.kept.values()) {
    if (of !== shoot) continue
    const heard = listener.heardAt[position - 1] ?? Number.POSITIVE_INFINITY
    const back = outages.findLast(({ from, to }) => from <= heard && to >= at)?.to ?? at
    waits.push(heard - Math.max(at, back))
  }
  const firsts = outages.map(({ to }) => (listener.heardAt.find((at) => at >= to) ?? Number.POSITIVE_INFINITY) - to)
  return { waits, firsts }
}
