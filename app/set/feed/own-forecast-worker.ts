/// <reference lib="webworker" />
import { fastestKernel } from '@/lib/model/kernels'
import { parseShoot } from '@/lib/plan/parse'
import type { Shoot } from '@/lib/plan/shoot'
import { type LiveKept, liveForecast } from '@/lib/session/live-forecast'
import type { Asked, OwnPlan, Told } from './own-forecast'

/** The live forecast by the phone itself, by the same rules as the server's. */
let known: { readonly text: string; readonly shoot: Shoot | null } | null = null
let kept: LiveKept = {}

self.onmessage = ({ data }: MessageEvent<Asked>) => self.postMessage(answer(data))

function answer({ plan, told, now, before }: Asked): Told {
  const shoot = shootOf(plan)
  if (!shoot) return null
  const made = liveForecast({ shoot, layout: plan.layout, told, now, before, kernel: fastestKernel() }, kept)
  kept = made.kept
  return made.forecast
}

function shootOf({ document }: OwnPlan): Shoot | null {
  const text = JSON.stringify(document)
  if (known?.text === text) return known.shoot
  const parsed = parseShoot(document)
  kept = {}
  known = { text, shoot: parsed.ok ? parsed.value : null }
  return known.shoot
}
