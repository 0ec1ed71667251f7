import 'server-only'
import { Worker } from 'node:worker_threads'
import type { Forecast } from '@/lib/model/forecast'
import type { ForecastDocument } from '@/lib/plan/forecast-document'
import type { Shoot } from '@/lib/plan/shoot'
import type { Asked, Told } from './forecast-thread'

/** `Omit` of each of the ways to ask. */
type Question<T> = T extends unknown ? Omit<T, 'turn'> : never

/** One thread: the machine's other cores belong to the rest of the server. */
class Pool {
  private worker: Worker | undefined
  private answered = false
  private broken = false
  private turn = 0
  private readonly waiting = new Map<number, (told: Told | undefined) => void>()

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
    const worker = new Worker(new URL('./forecast-thread.ts', import.meta.url))
    worker.unref()
    worker.on('message', (told: Told) => {
      this.answered = true
      this.settle(told.turn, told)
    })
    worker.on('error', (fault) => this.giveUp(fault.message))
    worker.on('exit', (code) => this.giveUp(`exit code ${code}`))
    this.worker = worker
    return worker
  }
  private settle(turn: number, told: Told | undefined) {
    this.waiting.get(turn)?.(told)
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

export async function forecastsBeside(shoot: Shoot, seed: number): Promise<ReadonlyMap<string, Forecast> | undefined> {
  const told = await pool.ask({ forecasts: shoot, seed })
  return told && 'forecasts' in told ? new Map(told.forecasts) : undefined
}
export async function documentBeside(shoot: Shoot): Promise<ForecastDocument | undefined> {
  const told = await pool.ask({ document: shoot })
  return told && 'document' in told ? told.document : undefined
}
