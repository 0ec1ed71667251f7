/// <reference lib="webworker" />
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import type { ReadersWay } from '@/lib/plan/as-read'
import { toCookPlan } from '@/lib/plan/cook-plan'
import { parseShoot } from '@/lib/plan/parse'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import type { UnitSystem } from '@/lib/units'
import { draftFrom, previewFrom } from './shoots/preview-from'
import type { PreviewAnswer } from './shoots/preview-here'
import type { HeatPictures } from './ui/heat-line-shapes'

/** The model in the browser: what a plan comes to while it is typed. What is saved the server works out itself. */
export type Asked = {
  readonly turn: number
  readonly document: ShootDocument
  readonly units: UnitSystem
  readonly way: ReadersWay
} & ({ readonly of: 'all' } | { readonly of: 'line'; readonly show: string | undefined })

export type Told = { readonly turn: number } & (
  | { readonly of: 'all'; readonly answer: PreviewAnswer }
  | { readonly of: 'line'; readonly line: HeatPictures | undefined }
)

/** The first of the 256, so that the line hardly moves when the others come. A multiple of the kernel's lanes. */
const DRAFT_MEMBERS = 64

let latest = 0
self.onmessage = ({ data }: MessageEvent<Asked>) => {
  latest = data.turn
  // newer typing that waits already is answered instead
  setTimeout(() => {
    if (data.turn === latest) self.postMessage(answerTo(data))
  })
}

function answerTo(asked: Asked): Told {
  const { turn, document, units, way } = asked
  const parsed = parseShoot(document)
  if (asked.of === 'line') {
    const line = parsed.ok
      ? draftFrom(parsed.value, forecastsOf(parsed.value, DRAFT_MEMBERS), units, way, asked.show)
      : undefined
    return { turn, of: 'line', line }
  }
  const answer: PreviewAnswer = parsed.ok
    ? { ok: true, value: previewFrom(parsed.value, forecastsOf(parsed.value), units, way) }
    : { ok: false, problems: parsed.problems, sentence: parsed.problems[0]?.sentence ?? '' }
  return { turn, of: 'all', answer }
}

function forecastsOf(shoot: Shoot, members?: number) {
  const options = { seed: shoot.seed ?? 1, kernel: fastestKernel(), ...(members === undefined ? {} : { members }) }
  return new Map(shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), options)]))
}
