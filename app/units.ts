import 'server-only'
import { cookies } from 'next/headers'
import type { UnitSystem } from '@/lib/units'

/** What this person chose to read; metric until they choose. */
export const chosenUnits = async (): Promise<UnitSystem> =>
  (await cookies()).get('units')?.value === 'us' ? 'us' : 'metric'
