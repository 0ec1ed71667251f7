import 'server-only'
import { Worker } from 'node:worker_threads'
import type { Beside as Slice } from '@/lib/export/cut-face-beside'
import type { DayChange } from '@/lib/plan/day-changes'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import type { Result } from '@/lib/refusals'
import type { Celsius, UnitSystem } from '@/lib/units'
import { Beside } from './beside'
import type { Asked, Told } from './day-thread'
import type { Gain } from './shoots/gains'
import { gainsOf } from './shoots/gains-of'
import { sliceAt } from './shoots/slice-at'
import { triedChange } from './shoots/tried-change'
import type { WhatIfAnswer } from './shoots/what-ifs'
import { whoseIs } from './whose'

const holder = globalThis as { emberslateDays?: Beside<Asked, Told> }
holder.emberslateDays ??= new Beside('day', () => new Worker(new URL('./day-thread.ts', import.meta.url)), 'day')
export const dayThread = holder.emberslateDays

export async function dayBeside(shoot: Shoot) {
  const told = await dayThread.ask({ layOut: shoot }, whoseIs(shoot))
  return told && 'laid' in told ? told : undefined
}
export async function gainsBeside(shoot: Shoot): Promise<readonly Gain[]> {
  const told = await dayThread.ask({ gains: shoot }, whoseIs(shoot))
  return told && 'gains' in told ? told.gains : gainsOf(shoot)
}
export async function changeBeside(
  document: ShootDocument,
  shoot: Shoot,
  change: DayChange,
): Promise<Result<WhatIfAnswer>> {
  const told = await dayThread.ask({ change, document, shoot }, whoseIs(shoot))
  return told && 'tried' in told ? told.tried : triedChange(document, shoot, change)
}
export async function sliceBeside(shoot: Shoot, at: Celsius, units: UnitSystem): Promise<Slice | null> {
  const told = await dayThread.ask({ sliceOf: shoot, at, units }, whoseIs(shoot))
  return told && 'slice' in told ? told.slice : sliceAt(shoot, at, units)
}
