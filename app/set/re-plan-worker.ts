/// <reference lib="webworker" />
import type { DayForecast } from '@/lib/day/day-forecast'
import type { Layout } from '@/lib/day/layout'
import { rePlan } from '@/lib/day/re-plan'
import type { DayState } from '@/lib/log/day-state'
import { fastestKernel } from '@/lib/model/kernels'
import { fromIso, toIso } from '@/lib/plan/clock'
import { parseShoot } from '@/lib/plan/parse'
import type { ShootDocument } from '@/lib/plan/shoot'
import { comparePlans, type PlannedMove } from '@/lib/session/compare-plans'
import { cookNow } from '@/lib/session/live-cook'
import type { Instant } from '@/lib/units'

export interface RePlanAsked {
  readonly document: ShootDocument
  readonly layout: Layout
  readonly told: DayState
  readonly now: Instant
}
export type RePlanAnswer =
  | { readonly ok: true; readonly moves: readonly PlannedMove[]; readonly dropped: Layout['dropped'] }
  | { readonly ok: false; readonly sentence: string }

/** The rest of the day laid out anew from what its log tells, in a thread of its own; nothing is sent by it. */
self.onmessage = ({ data }: MessageEvent<RePlanAsked>) => self.postMessage(answerTo(data))

function answerTo({ document, layout, told, now }: RePlanAsked): RePlanAnswer {
  const parsed = parseShoot(document)
  if (!parsed.ok) return { ok: false, sentence: parsed.problems[0]?.sentence ?? 'The shoot does not read.' }
  const shoot = parsed.value
  const forecasts = new Map<string, DayForecast>()
  const meatOn: Record<string, string> = { ...layout.meatOn }
  for (const cook of shoot.cooks) {
    const planned = fromIso(layout.meatOn[cook.id] ?? layout.start)
    const lids = layout.lidOpenings?.[cook.id] ?? []
    const { forecast, seen } = cookNow(
      { shoot, cook, planned, lids, told, now, kernel: fastestKernel() },
      undefined,
    ).now
    forecasts.set(cook.id, forecast)
    if (seen.begun) meatOn[cook.id] = toIso(seen.meatOn, shoot.zone)
  }
  const start = meatOn[shoot.cooks[0]?.id ?? ''] ?? layout.start
  const after = rePlan(shoot, forecasts, { previous: { ...layout, meatOn, start }, now, seed: shoot.seed ?? 1 })
  const known = new Set(layout.dropped.map(({ id }) => id))
  return {
    ok: true,
    moves: comparePlans(shoot, layout, after, now),
    dropped: after.dropped.filter(({ id }) => !known.has(id)),
  }
}
