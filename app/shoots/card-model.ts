import 'server-only'
import { buildCard, checkCard } from '@/lib/card/card'
import { type CardModel, cardModel } from '@/lib/export/card'
import type { Published } from '@/lib/export/published'
import type { Forecast } from '@/lib/model/forecast'
import { formatDate } from '@/lib/plan/clock'
import type { Shoot } from '@/lib/plan/shoot'
import { forecastsOf } from '../worked-out'

/** The card as page and paper both show it: what is contradicted is not in it. */
export function cardModelOf(shoot: Shoot, published?: Published): CardModel {
  const forecasts = forecastsOf(shoot)
  const card = buildCard(shoot, forecasts)
  const forecast = forecasts.get(card.cook) as Forecast
  return cardModel(card, checkCard(card, forecasts), { forecast, date: formatDate(shoot), published })
}
