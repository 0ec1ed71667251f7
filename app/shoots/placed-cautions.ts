import { cautionsFor } from '@/lib/card/cautions'
import type { Cook, Shoot } from '@/lib/plan/shoot'
import type { Warning } from '@/lib/refusals'
import type { Forecasts } from '../worked-out'

/** Where in a cook the hazard of a caution stands; cautions for the table and the kitchen have no place on the plan. */
function placeOf(code: string, cook: Cook): string | null {
  const stage = (kind: string) => cook.stages.findLastIndex((s) => s.do === kind)
  const last = Math.max(stage('sear'), stage('roast'))
  if (code === 'below-minimum' || code === 'poultry-minimum') return `/stages/${last}/until/core`
  if (code === 'hold-too-cool') return `/stages/${stage('hold')}`
  if (code === 'carbon-monoxide') return '/cooker/kind'
  if (code === 'fat-flare') return `/stages/${stage('sear')}/at`
  return null
}

export function placedCautions(shoot: Shoot, forecasts: Forecasts): readonly Warning[] {
  return shoot.cooks.flatMap((cook, i) =>
    cautionsFor({ ...shoot, cooks: [cook] }, forecasts).flatMap(({ code, sentence }) => {
      const place = placeOf(code, cook)
      return place === null ? [] : [{ code, path: `/cooks/${i}${place}`, sentence }]
    }),
  )
}
