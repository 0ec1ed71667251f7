import type { DayState } from '@/lib/log/day-state'
import type { LiveForecast } from '@/lib/session/session'
import type { Instant } from '@/lib/units'
import type { SetOpening } from '../set-feed'

export type OwnPlan = NonNullable<SetOpening['plan']>
/** What the device's own forecaster is asked. */
export interface Asked {
  readonly plan: OwnPlan
  readonly told: DayState
  readonly now: Instant
  readonly before: LiveForecast | null
}
/** Null where the plan cannot be forecast, or the model failed. */
export type Told = LiveForecast | null

/** Works out forecasts beside the page. */
export interface Forecaster {
  /** So that its script is here before the network goes. */
  warm(): void
  ask(asked: Asked): Promise<Told>
  stop(): void
}

export class WorkerForecaster implements Forecaster {
  #worker: Worker | null = null
  #waiting: ((told: Told) => void) | null = null

  warm(): void {
    if (this.#worker || typeof Worker === 'undefined') return
    const worker = new Worker(new URL('./own-forecast-worker.ts', import.meta.url))
    worker.onmessage = ({ data }: MessageEvent<Told>) => this.#settle(data)
    worker.onerror = (fault) => {
      console.warn('The forecast of this device stopped:', fault.message)
      this.stop()
    }
    this.#worker = worker
  }
  /** One question at a time; a second one is answered with nothing. */
  ask(asked: Asked): Promise<Told> {
    this.warm()
    if (!this.#worker || this.#waiting) return Promise.resolve(null)
    const answer = new Promise<Told>((resolve) => {
      this.#waiting = resolve
    })
    this.#worker.postMessage(asked)
    return answer
  }
  stop(): void {
    this.#worker?.terminate()
    this.#worker = null
    this.#settle(null)
  }

  #settle(told: Told): void {
    const waiting = this.#waiting
    this.#waiting = null
    waiting?.(told)
  }
}
