import 'server-only'
import { cookies } from 'next/headers'
import type { UnitSystem } from '@/lib/units'
import { visitorLocale } from './locale'

/** What this person chose to read; until they choose, what their region reads. */
export async function chosenUnits(): Promise<UnitSystem> {
  const chosen = (await cookies()).get('units')?.value
  return chosen === 'us' || chosen === 'metric' ? chosen : (await visitorLocale()).units
}
