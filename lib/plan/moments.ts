import type { CookerKind } from '../model/cook'
import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import type { Cook } from './shoot'

/** Cookers whose vents are opened for a sear. */
export const burnsSolidFuel = (kind: CookerKind) => kind === 'ceramic-charcoal' || kind === 'kettle-charcoal'

/** The moments that this cook's plan has, in reading order. */
export function momentsOf(cook: Cook): MomentId[] {
  const sears = cook.stages.some((stage) => stage.do === 'sear')
  const turns = cook.stages.some((stage) => stage.do === 'roast' && stage.turn !== undefined)
  const absent = new Set<MomentId>()
  if (!turns) absent.add('turn')
  if (!sears) absent.add('sear-start')
  if (!sears || !burnsSolidFuel(cook.cooker.kind)) absent.add('vents-open')
  return MOMENT_IDS.filter((id) => !absent.has(id))
}
