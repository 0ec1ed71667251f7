import { layOutDay } from '@/lib/day/lay-out'
import { whatNarrows } from '@/lib/model/what-narrows'
import { narrowingSentence } from '@/lib/plan/narrowing-words'
import type { Shoot } from '@/lib/plan/shoot'
import { forecastsOf, seedOf } from '../worked-out'
import type { Gain } from './gains'
import { meatOnOf } from './heat-line-input'

/** What measuring would do for each cook of a plan. Slower than the preview, so it is asked for once the typing has stopped. */
export function gainsOf(shoot: Shoot): readonly Gain[] {
  const forecasts = forecastsOf(shoot)
  const bare = { ...shoot, shots: undefined, tasks: undefined }
  const layout = layOutDay(bare, forecasts, { seed: seedOf(shoot), sweeps: 1 })
  return shoot.cooks.flatMap(({ id }, cook) => {
    const forecast = forecasts.get(id)
    const found = forecast && whatNarrows(forecast)
    if (!found) return []
    const clock = { meatOn: meatOnOf(layout, id), zone: shoot.zone }
    return found.each.flatMap((each) => {
      const sentence = narrowingSentence(each, found, clock)
      return sentence ? [{ cook, what: each.what, sentence }] : []
    })
  })
}
