import 'server-only'
import { keptCookers } from '@/lib/data/cookers'
import { combineLessons } from '@/lib/model/memory'
import { writtenMemory } from '@/lib/plan/cooker-memory-fields'
import type { UnitSystem } from '@/lib/units'
import { memorySentence } from '@/lib/wrap/memory-words'
import type { RememberedCooker } from './remembered-field'

/** Every cooker that something is remembered of. */
export async function rememberedCookers(units: UnitSystem): Promise<readonly RememberedCooker[]> {
  return (await keptCookers()).flatMap(({ name, kind, lessons }) => {
    const memory = combineLessons(lessons)
    if (!memory) return []
    return [{ name, kind, cooks: memory.cooks, memory: writtenMemory(memory), says: memorySentence(memory, units) }]
  })
}
