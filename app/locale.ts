import 'server-only'
import { headers } from 'next/headers'
import { cache } from 'react'
import { CORES_OWN, type ReadersWay } from '@/lib/plan/as-read'
import type { UnitSystem } from '@/lib/units'

/** What a visitor's language says of their region. The texts are English wherever they are read. */
export interface VisitorLocale {
  readonly way: ReadersWay
  readonly units: UnitSystem
}
const HERE: VisitorLocale = { way: CORES_OWN, units: 'metric' }

/** By Accept-Language, whose first tag counts; without one as it is written here. */
export function localeOf(accepted: string | null): VisitorLocale {
  const first = (accepted ?? '').split(',')[0]?.split(';')[0]?.trim() ?? ''
  if (!/^[a-z]{2,3}(-|$)/i.test(first)) return HERE
  try {
    const locale = new Intl.Locale(first)
    // A language without a region tells nothing of clocks: bare "en" is sent from everywhere.
    return locale.region ? { way: wayOf(locale), units: locale.region === 'US' ? 'us' : 'metric' } : HERE
  } catch {
    return HERE
  }
}

function wayOf(locale: Intl.Locale): ReadersWay {
  const { hourCycle } = new Intl.DateTimeFormat(locale, { hour: 'numeric' }).resolvedOptions()
  const order = new Intl.DateTimeFormat(locale, { dateStyle: 'long' }).formatToParts(0).map(({ type }) => type)
  return {
    clock: hourCycle === 'h12' || hourCycle === 'h11' ? '12h' : '24h',
    dates: order.indexOf('month') < order.indexOf('day') ? 'month-first' : 'day-first',
  }
}

export const visitorLocale = cache(
  async (): Promise<VisitorLocale> => localeOf((await headers()).get('accept-language')),
)
export const readersWay = async (): Promise<ReadersWay> => (await visitorLocale()).way
