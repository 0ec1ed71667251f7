import 'server-only'
import { BorderError } from '@/lib/data/border-error'
import type { Beside } from '@/lib/export/cut-face-beside'
import { COOKER_TEMP } from '@/lib/plan/bounds'
import { quantity } from '@/lib/plan/fields'
import type { Shoot } from '@/lib/plan/shoot'
import { type Celsius, formatTemp, type UnitSystem } from '@/lib/units'
import { sliceBeside } from '../day-pool'

const AT = quantity<Celsius>('temperature', COOKER_TEMP)

/** The first cook's slice at another heat, to the same middle; a heat that cannot be had is refused at its field. */
export async function cutFaceAt(shoot: Shoot, written: unknown, units: UnitSystem): Promise<Beside> {
  const read = AT.safeParse(written)
  if (!read.success) throw refusal(read.error.issues[0]?.message ?? 'Write a temperature such as "110 °C".')
  const beside = await sliceBeside(shoot, read.data, units)
  if (beside === null)
    throw refusal(
      `At ${formatTemp(read.data, units)} most of these cooks never come to the plan’s middle: write a heat nearer to the plan’s.`,
    )
  return beside
}
const refusal = (sentence: string) => new BorderError('invalid', { problems: [{ pointer: '/at', sentence }], sentence })
