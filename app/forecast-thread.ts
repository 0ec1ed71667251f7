import { parentPort } from 'node:worker_threads'
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import { toCookPlan } from '@/lib/plan/cook-plan'
import type { Shoot } from '@/lib/plan/shoot'

/** The thread beside the server that works out forecasts, slice and all, so that no request waits for another's. */
export interface Asked {
  readonly turn: number
  readonly shoot: Shoot
  readonly seed: number
}

parentPort?.on('message', ({ turn, shoot, seed }: Asked) => {
  const kernel = fastestKernel()
  const forecasts = shoot.cooks.map(
    (cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed, kernel })] as const,
  )
  const traces = forecasts.flatMap(([, { trace }]) => [trace.cookerC, trace.surfaceC, trace.coreC, trace.probeC])
  parentPort?.postMessage(
    { turn, forecasts },
    traces.map((row) => row.buffer as ArrayBuffer),
  )
})
