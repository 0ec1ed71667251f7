/// <reference lib="webworker" />
import type { DayForecast } from '@/lib/day/day-forecast'
import type { Layout } from '@/lib/day/layout'
import { rePlan } from '@/lib/day/re-plan'
import type { DayState } from '@/lib/log/day-state'
import { fastestKernel } from '@/lib/model/kernels'
import { fromIso, toIso } from '@/lib/plan/clock'
import { parseShoot } from '@/lib/plan/parse'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import { shootAsAdopted } from '@/lib/session/adopted'
import { placedNow } from '@/lib/session/announced-layout'
import { asCalled, comparePlans, type PlannedMove } from '@/lib/session/compare-plans'
import { cookNow } from '@/lib/session/live-cook'
import { goneOf, RE_PLAN } from '@/lib/session/re-planned'
import type { Expected, Session } from '@/lib/session/session'
import type { SessionDay } from '@/lib/session/session-day'
import { besideWords, type TriedOnSet, withTried } from '@/lib/session/what-if-on-set'
import type { Instant } from '@/lib/units'
import { shootDoesNotRead } from '../words/desk'

export interface RePlanAsked {
  readonly document: ShootDocument
  /** This morning's. */
  readonly layout: Layout
  readonly told: DayState
  readonly now: Instant
  readonly tried: TriedOnSet | null
  readonly day: Pick<SessionDay, 'calls'>
  readonly calls: Session['calls']
}
export type RePlanAnswer =
  | {
      readonly ok: true
      readonly moves: readonly PlannedMove[]
      readonly tried: TriedOnSet | null
      /** What it does to the food, in words. */
      readonly lines: readonly string[]
    }
  | { readonly ok: false; readonly sentence: string }

/** The rest of the day laid out anew from what its log tells, in a thread of its own; nothing is sent by it. */
self.onmessage = ({ data }: MessageEvent<RePlanAsked>) => self.postMessage(answerTo(data))

function answerTo(asked: RePlanAsked): RePlanAnswer {
  const parsed = parseShoot(asked.document)
  if (!parsed.ok) return { ok: false, sentence: parsed.problems[0]?.sentence ?? shootDoesNotRead }
  const { told, now, tried } = asked
  const layout = placedNow(asked.layout, told, parsed.value.zone)
  const then = tried ? withTried(told, tried, now) : told
  const shoot = shootAsAdopted(withoutDropped(parsed.value, told), then)
  const { forecasts, meatOn, expected } = cooksNow(shoot, layout, then, now)
  const start = meatOn[shoot.cooks[0]?.id ?? ''] ?? layout.start
  const after = rePlan(shoot, forecasts, { previous: { ...layout, meatOn, start }, now, seed: shoot.seed ?? 1 })
  const bare = tried ? cooksNow(shootAsAdopted(parsed.value, told), layout, told, now).expected : []
  return {
    ok: true,
    moves: asCalled(comparePlans(shoot, layout, after, now, goneOf(told)), asked, expected),
    tried,
    lines: tried ? besideWords(shoot, tried.change.cook, bare, expected) : [],
  }
}

/** What somebody dropped by hand stays dropped; what a re-plan dropped may find room again. */
function withoutDropped(shoot: Shoot, { shots }: DayState): Shoot {
  const isOut = (id: string) => shots[id]?.state === 'dropped' && shots[id]?.why !== RE_PLAN
  const kept = (shoot.shots ?? []).filter(({ id }) => !isOut(id))
  const bare = kept.map((shot) => (shot.after ? { ...shot, after: shot.after.filter((id) => !isOut(id)) } : shot))
  return shoot.shots ? { ...shoot, shots: bare } : shoot
}

function cooksNow(shoot: Shoot, layout: Layout, told: DayState, now: Instant) {
  const forecasts = new Map<string, DayForecast>()
  const meatOn: Record<string, string> = { ...layout.meatOn }
  const expected: Expected[] = []
  for (const cook of shoot.cooks) {
    const planned = fromIso(layout.meatOn[cook.id] ?? layout.start)
    const lids = layout.lidOpenings?.[cook.id] ?? []
    const made = cookNow({ shoot, cook, planned, lids, told, now, kernel: fastestKernel() }, undefined).now
    forecasts.set(cook.id, made.forecast)
    expected.push(...made.expected)
    if (made.seen.begun) meatOn[cook.id] = toIso(made.seen.meatOn, shoot.zone)
  }
  return { forecasts, meatOn, expected }
}
