/// <reference lib="webworker" />
import { type Forecasts, unpackForecasts } from '@/lib/day/forecast-bytes'
import { layOutDay } from '@/lib/day/lay-out'
import { parseShoot, problemsForLayout } from '@/lib/plan/parse'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import type { UnitSystem } from '@/lib/units'
import { type DayView, dayViewOf } from './shoots/[shootId]/day/day-view'

/** The layout engine in the browser: tries a day out as it is typed. What is saved is laid out anew by the server. */
export type ToWorker =
  | { readonly samples: ArrayBuffer }
  | { readonly turn: number; readonly document: ShootDocument; readonly units: UnitSystem; readonly hasty: boolean }
export type FromWorker =
  | { readonly turn: number; readonly view: DayView; readonly rough: boolean; readonly workMs: number }
  | { readonly turn: number; readonly problems: readonly Problem[] }

/** A first look at once, then a careful one; `null` is the server's own care. */
const HASTE = 1
const CARE = 14
const IDLE_MS = 500

let forecasts: Forecasts = new Map()
let latest = 0
const tell = (message: FromWorker) => self.postMessage(message)
/** Lets a newer question in before the next, longer answer is begun. */
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if ('samples' in data) forecasts = unpackForecasts(data.samples)
  else void answer(data)
}

async function answer({ turn, document, units, hasty }: Extract<ToWorker, { turn: number }>) {
  latest = turn
  await pause(0)
  if (turn !== latest) return
  const parsed = parseShoot(document)
  const problems = parsed.ok ? problemsForLayout(parsed.value) : parsed.problems
  if (!parsed.ok || problems.length > 0) return tell({ turn, problems })
  const shoot = parsed.value
  const lay = (sweeps: number | undefined) => {
    const started = performance.now()
    const layout = layOutDay(shoot, forecasts, { seed: shoot.seed ?? 1, sweeps })
    const workMs = performance.now() - started
    tell({ turn, view: dayViewOf(shoot, layout, forecasts, units), rough: sweeps !== undefined, workMs })
  }
  lay(HASTE)
  for (const [sweeps, wait] of hasty
    ? []
    : ([
        [CARE, 0],
        [undefined, IDLE_MS],
      ] as const)) {
    await pause(wait)
    if (turn !== latest) return
    lay(sweeps)
  }
}
