/// <reference lib="webworker" />
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import type { ReadersWay } from '@/lib/plan/as-read'
import { toCookPlan } from '@/lib/plan/cook-plan'
import { parseShoot } from '@/lib/plan/parse'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import type { UnitSystem } from '@/lib/units'
import { previewFrom } from './shoots/preview-from'
import type { PreviewAnswer } from './shoots/preview-here'

/** The model in the browser: what a plan comes to while it is typed. What is saved the server works out itself. */
export interface Asked {
  readonly turn: number
  readonly document: ShootDocument
  readonly units: UnitSystem
  readonly way: ReadersWay
}
export interface Told {
  readonly turn: number
  readonly answer: PreviewAnswer
}

let latest = 0
self.onmessage = ({ data }: MessageEvent<Asked>) => {
  latest = data.turn
  // newer typing that waits already is answered instead
  setTimeout(() => {
    if (data.turn === latest) self.postMessage({ turn: data.turn, answer: answerTo(data) } satisfies Told)
  })
}

function answerTo({ document, units, way }: Asked): PreviewAnswer {
  const parsed = parseShoot(document)
  if (!parsed.ok) return { ok: false, problems: parsed.problems, sentence: parsed.problems[0]?.sentence ?? '' }
  return { ok: true, value: previewFrom(parsed.value, forecastsOf(parsed.value), units, way) }
}

function forecastsOf(shoot: Shoot) {
  const options = { seed: shoot.seed ?? 1, kernel: fastestKernel() }
  return new Map(shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), options)]))
}
