import type { LiveForecast, Session } from '@/lib/session/session'
import type { Instant } from '@/lib/units'
import type { SetOpening } from '../set-feed'
import type { Forecaster } from './own-forecast'

/** Without news the forecast is made anew so often: a probe that is not read says something too. [estimate] */
const EVERY_MS = 60_000

/** When a device that is cut off works out its own forecast. */
export class OwnForecasts {
  #asked = Number.NEGATIVE_INFINITY
  #news = true
  #busy = false

  constructor(
    readonly forecaster: Forecaster | null,
    readonly made: (forecast: LiveForecast) => void,
  ) {}

  /** Something was logged, or the server has gone. */
  news(): void {
    this.#news = true
  }
  tick(session: Session, plan: SetOpening['plan'], now: Instant): void {
    if (!this.forecaster || !plan || this.#busy || (!this.#news && now < this.#asked + EVERY_MS)) return
    this.#busy = true
    this.#news = false
    this.#asked = now
    void this.forecaster.ask({ plan, told: session.told, now, before: session.forecast }).then((forecast) => {
      this.#busy = false
      if (forecast) this.made(forecast)
    })
  }
}
