import { backoffMs, type DeviceClock, Pause } from '../feed/device-clock'
import type { PhotoStore, WaitingPhoto } from './photo-store'

/** `refused`: of no use to send it again. `not-now`: the server is away, or the disk is full. */
export type PhotoAnswer = 'kept' | 'refused' | 'not-now'
export type SendPhoto = (photo: WaitingPhoto) => Promise<PhotoAnswer>

const MOST_WAIT_MS = 30_000

/** Photographs of this phone: kept first, then sent one after the other until the server has each. */
export class PhotoQueue {
  #waiting: ReadonlyMap<string, WaitingPhoto> = new Map()
  readonly #listeners = new Set<() => void>()
  readonly #pause: Pause
  readonly #store: Promise<PhotoStore>
  #sending = false
  #stopped = false
  #failed = 0

  constructor(
    store: Promise<PhotoStore>,
    readonly send: SendPhoto,
    clock: DeviceClock,
  ) {
    this.#pause = new Pause(clock)
    this.#store = store
  }

  async start(): Promise<void> {
    const kept = await (await this.#store).open()
    this.#change((all) => {
      for (const photo of kept) all.set(photo.name, photo)
    })
    void this.#sendAll()
  }
  stop(): void {
    this.#stopped = true
    this.#pause.hurry()
  }
  waiting = (): ReadonlyMap<string, WaitingPhoto> => this.#waiting
  subscribe = (changed: () => void): (() => void) => {
    this.#listeners.add(changed)
    return () => this.#listeners.delete(changed)
  }

  /** Its name, once it is safe on this phone. */
  async add(photo: WaitingPhoto): Promise<string> {
    await (await this.#store).keep(photo)
    this.#change((all) => all.set(photo.name, photo))
    this.hurry()
    return photo.name
  }
  /** There may be a network again. */
  hurry(): void {
    this.#failed = 0
    this.#pause.hurry()
    void this.#sendAll()
  }

  #next = () => [...this.#waiting.values()].find(({ refused }) => !refused)
  async #sendAll(): Promise<void> {
    if (this.#sending) return
    this.#sending = true
    for (let photo = this.#next(); photo && !this.#stopped; photo = this.#next()) {
      const answer = await this.send(photo).catch(() => 'not-now' as const)
      if (answer === 'kept') await this.#sent(photo.name)
      if (answer === 'refused') this.#refuse(photo)
      if (answer === 'not-now' && !this.#stopped) await this.#pause.wait(backoffMs(this.#failed++, MOST_WAIT_MS))
    }
    this.#sending = false
  }
  #refuse(photo: WaitingPhoto): void {
    this.#change((all) => all.set(photo.name, { ...photo, refused: true }))
  }
  async #sent(name: string): Promise<void> {
    this.#failed = 0
    await (await this.#store).drop(name).catch((fault) => console.warn('Sent, and still kept here:', fault))
    this.#change((all) => all.delete(name))
  }
  #change(how: (all: Map<string, WaitingPhoto>) => void): void {
    const all = new Map(this.#waiting)
    how(all)
    this.#waiting = all
    for (const changed of this.#listeners) changed()
  }
}
