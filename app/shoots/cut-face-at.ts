import 'server-only'
import { BorderError } from '@/lib/data/border-error'
import { type Beside, besideOf } from '@/lib/export/cut-face-beside'
import { anotherHeat } from '@/lib/model/another-heat'
import type { Forecast } from '@/lib/model/forecast'
import { COOKER_TEMP } from '@/lib/plan/bounds'
import { quantity } from '@/lib/plan/fields'
import type { Shoot } from '@/lib/plan/shoot'
import { type Celsius, formatTemp, type UnitSystem } from '@/lib/units'
import { forecastsOf } from '../workbench'

const AT = quantity<Celsius>('temperature', COOKER_TEMP)

/** The first cook's slice at another heat, to the same middle; a heat that cannot be had is refused at its field. */
export function cutFaceAt(shoot: Shoot, written: unknown, units: UnitSystem): Beside {
  const read = AT.safeParse(written)
  if (!read.success) throw refusal(read.error.issues[0]?.message ?? 'Write a temperature such as "110 °C".')
  const plan = forecastsOf(shoot).get(shoot.cooks[0]?.id ?? '') as Forecast
  const other = anotherHeat(plan, read.data)
  if (other === null)
    throw refusal(
      `At ${formatTemp(read.data, units)} most of these cooks never come to the plan’s middle: write a heat nearer to the plan’s.`,
    )
  return besideOf(plan, other, units)
}
const refusal = (sentence: string) => new BorderError('invalid', { problems: [{ pointer: '/at', sentence }], sentence })
