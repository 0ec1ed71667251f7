import 'server-only'
import type { Worker } from 'node:worker_threads'
import { sayFault } from '@/lib/data/say'
import { noteBroken } from './broken-threads'

/** `Omit` of each of the ways to ask. */
type Question<T> = T extends unknown ? Omit<T, 'turn'> : never
type Turn = { readonly turn: number }

/** One thread beside the server, so that no request waits for what another asked. */
export class Beside<Asked extends Turn, Told extends Turn> {
  private worker: Worker | undefined
  private answered = false
  private broken = false
  private turn = 0
  private readonly waiting = new Map<number, (told: Told | undefined) => void>()

  constructor(
    private readonly name: string,
    private readonly start: () => Worker,
  ) {}

  /** What the thread answers; nothing where it does not run, and then the server does the work itself. */
  ask(question: Question<Asked>): Promise<Told | undefined> {
    const worker = this.started()
    if (!worker) return Promise.resolve(undefined)
    return new Promise((resolve) => {
      const turn = ++this.turn
      this.waiting.set(turn, resolve)
      worker.postMessage({ turn, ...question })
    })
  }

  private started(): Worker | undefined {
    if (this.worker || this.broken) return this.worker
    const worker = this.start()
    worker.unref()
    worker.on('message', (told: Told) => {
      this.answered = true
      this.settle(told.turn, told)
    })
    worker.on('error', (fault) => this.giveUp(worker, fault))
    worker.on('exit', (code) => this.giveUp(worker, new Error(`exit code ${code}`)))
    this.worker = worker
    return worker
  }
  private settle(turn: number, told: Told | undefined) {
    this.waiting.get(turn)?.(told)
    this.waiting.delete(turn)
  }
  /** A thread that has never answered is not started again. What it was asked the server works out itself, and tells what breaks. */
  private giveUp(worker: Worker, why: unknown) {
    // One that failed also ends, when the next may be at work already.
    if (this.worker !== worker) return
    sayFault('thread-stopped', why, { thread: this.name })
    this.broken = !this.answered
    if (this.broken) noteBroken(this.name)
    this.worker = undefined
    for (const turn of [...this.waiting.keys()]) this.settle(turn, undefined)
  }
}
