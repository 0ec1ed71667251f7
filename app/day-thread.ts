import type { Beside } from '@/lib/export/cut-face-beside'
import type { DayChange } from '@/lib/plan/day-changes'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import type { Result } from '@/lib/refusals'
import type { Celsius, UnitSystem } from '@/lib/units'
import { answers } from './answers'
import type { Gain } from './shoots/gains'
import { gainsOf } from './shoots/gains-of'
import { sliceAt } from './shoots/slice-at'
import { triedChange } from './shoots/tried-change'
import type { WhatIfAnswer } from './shoots/what-ifs'
import { type Forecasts, forecastsOf, type LaidOut, layoutOf } from './worked-out'

/** The thread beside the server that lays days out: what takes seconds here keeps nobody waiting there. */
export type Asked = { readonly turn: number } & (
  | { readonly layOut: Shoot }
  | { readonly change: DayChange; readonly document: ShootDocument; readonly shoot: Shoot }
  | { readonly gains: Shoot }
  | { readonly sliceOf: Shoot; readonly at: Celsius; readonly units: UnitSystem }
)
export type Told = {
  readonly turn: number
} /** `forecasts`: what the day was laid out from, where that knows of openings. */ & (
  | { readonly laid: LaidOut; readonly forecasts: Forecasts | null }
  | { readonly tried: Result<WhatIfAnswer> }
  | { readonly gains: readonly Gain[] }
  | { readonly slice: Beside | null }
)

answers(answerTo)

function answerTo(asked: Asked): Told {
  const { turn } = asked
  if ('gains' in asked) return { turn, gains: gainsOf(asked.gains) }
  if ('change' in asked) return { turn, tried: triedChange(asked.document, asked.shoot, asked.change) }
  if ('sliceOf' in asked) return { turn, slice: sliceAt(asked.sliceOf, asked.at, asked.units) }
  const laid = layoutOf(asked.layOut)
  const openings = laid.ok ? laid.layout.lidOpenings : undefined
  return { turn, laid, forecasts: openings ? forecastsOf(asked.layOut, openings) : null }
}
