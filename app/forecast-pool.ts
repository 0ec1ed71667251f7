import 'server-only'
import { Worker } from 'node:worker_threads'
import type { Forecast } from '@/lib/model/forecast'
import type { Shoot } from '@/lib/plan/shoot'
import type { Asked } from './forecast-thread'

type Made = ReadonlyMap<string, Forecast>
interface Told {
  readonly turn: number
  readonly forecasts: readonly (readonly [string, Forecast])[]
}

/** One thread: the machine's other cores belong to the rest of the server. */
class Pool {
  private worker: Worker | undefined
  private answered = false
  private broken = false
  private turn = 0
  private readonly waiting = new Map<number, (made: Made | undefined) => void>()

  /** The forecasts of a shoot; none where the thread does not run, and then the server does the work itself. */
  ask(shoot: Shoot, seed: number): Promise<Made | undefined> {
    const worker = this.started()
    if (!worker) return Promise.resolve(undefined)
    return new Promise((resolve) => {
      const asked: Asked = { turn: ++this.turn, shoot, seed }
      this.waiting.set(asked.turn, resolve)
      worker.postMessage(asked)
    })
  }

  private started(): Worker | undefined {
    if (this.worker || this.broken) return this.worker
    const worker = new Worker(new URL('./forecast-thread.ts', import.meta.url))
    worker.unref()
    worker.on('message', ({ turn, forecasts }: Told) => {
      this.answered = true
      this.settle(turn, new Map(forecasts))
    })
    worker.on('error', (fault) => this.giveUp(fault.message))
    worker.on('exit', (code) => this.giveUp(`exit code ${code}`))
    this.worker = worker
    return worker
  }
  private settle(turn: number, made: Made | undefined) {
    this.waiting.get(turn)?.(made)
    this.waiting.delete(turn)
  }
  /** A thread that has never answered is not started again. What it was asked the server works out itself, and tells what breaks. */
  private giveUp(why: string) {
    if (!this.worker) return
    console.warn(`The forecast thread stopped: ${why}`)
    this.broken = !this.answered
    this.worker = undefined
    for (const turn of [...this.waiting.keys()]) this.settle(turn, undefined)
  }
}

const holder = globalThis as { emberslateForecasts?: Pool }
holder.emberslateForecasts ??= new Pool()
const pool = holder.emberslateForecasts

export const forecastsBeside = (shoot: Shoot, seed: number) => pool.ask(shoot, seed)
