import 'server-only'
import type { Worker } from 'node:worker_threads'
import { databaseUrl } from '@/lib/data/env'
import { sayFault } from '@/lib/data/say'
import { askFar } from '@/lib/data/server/jobs'
import type { Kind } from '@/lib/data/server/jobs-queue'
import type { Fault } from './answers'
import { noteBroken } from './broken-threads'

/** `Omit` of each of the ways to ask. */
export type Question<T> = T extends unknown ? Omit<T, 'turn'> : never
type Turn = { readonly turn: number }
interface Asker<Told> {
  readonly resolve: (told: Told | undefined) => void
  readonly reject: (fault: Error) => void
}

/**
 * Work that no request should wait for behind another's. One process has a thread for it beside the server; where several
 * share a PostgreSQL, whichever of them is free does it.
 */
export class Beside<Asked extends Turn, Told extends Turn> {
  private worker: Worker | undefined
  private answered = false
  private broken = false
  private turn = 0
  private readonly waiting = new Map<number, Asker<Told>>()

  /** `kind`: null where the thread remembers from one asking to the next, so that no other process can answer. */
  constructor(
    private readonly name: string,
    private readonly start: () => Worker,
    private readonly kind: Kind | null,
  ) {}

  /** What is told; nothing where no thread runs, and then the server does the work itself. A fault of the work is thrown. */
  async ask(question: Question<Asked>, whose: string): Promise<Told | undefined> {
    if (this.kind === null || databaseUrl() === null) return this.here(question)
    const far = await askFar({ kind: this.kind, asked: question, whose })
    return far ? (far.told as Told) : this.here(question)
  }
  /** By this process's own thread. */
  here(question: Question<Asked>): Promise<Told | undefined> {
    const worker = this.started()
    if (!worker) return Promise.resolve(undefined)
    return new Promise((resolve, reject) => {
      const turn = ++this.turn
      this.waiting.set(turn, { resolve, reject })
      worker.postMessage({ turn, ...question })
    })
  }

  private started(): Worker | undefined {
    if (this.worker || this.broken) return this.worker
    const worker = this.start()
    worker.unref()
    worker.on('message', (told: Told | Fault) => {
      this.answered = true
      this.settle(told.turn, told)
    })
    worker.on('error', (fault) => this.giveUp(worker, fault))
    worker.on('exit', (code) => this.giveUp(worker, new Error(`exit code ${code}`)))
    this.worker = worker
    return worker
  }
  private settle(turn: number, told: Told | Fault | undefined) {
    const asker = this.waiting.get(turn)
    this.waiting.delete(turn)
    if (told && 'fault' in told) asker?.reject(new Error(told.fault))
    else asker?.resolve(told)
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
