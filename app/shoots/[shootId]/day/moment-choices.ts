import { MOMENT_IDS, type MomentId } from '@/lib/model/moment-ids'
import { valueAt } from '@/lib/plan/edit'
import { momentName, momentsOf } from '@/lib/plan/moments'
import type { ShootDocument } from '@/lib/plan/shoot'
import { listAt, sketchOf } from '@/lib/plan/sketch'

export type MomentChoice = readonly [id: MomentId, words: string]

/** The moments that the plan has of the roast of a shot or task; all of them while the plan is in pieces. */
export function momentChoices(document: ShootDocument, at: string): readonly MomentChoice[] {
  const cooks = listAt<{ id?: unknown }>(document, '/cooks')
  const own = cooks.find(({ id }) => id === valueAt(document, `${at}/cook`)) ?? cooks[0]
  const sketch = sketchOf(own)
  const kind = sketch?.cooker.kind ?? 'kettle-charcoal'
  return (sketch ? momentsOf(sketch) : MOMENT_IDS).map((id) => [id, momentName(id, kind)])
}
