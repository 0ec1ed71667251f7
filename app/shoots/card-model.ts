import 'server-only'
import { buildCard, checkCard } from '@/lib/card/card'
import { type CardModel, cardModel } from '@/lib/export/card'
import type { Published } from '@/lib/export/published'
import type { CookFacts } from '@/lib/log/cook-facts'
import type { Forecast } from '@/lib/model/forecast'
import { formatDate } from '@/lib/plan/clock'
import type { Shoot } from '@/lib/plan/shoot'
import { knownSizes } from '../sizes-ready'
import { forecastsOf } from '../worked-out'

/** The card as page and paper both show it: what is contradicted is not in it. */
export function cardModelOf(shoot: Shoot, published?: Published, facts: CookFacts | null = null): CardModel {
  const forecasts = forecastsOf(shoot)
  const card = buildCard(shoot, forecasts)
  const forecast = forecasts.get(card.cook) as Forecast
  return cardModel(card, checkCard(card, forecasts, facts), {
    forecast,
    date: formatDate(shoot),
    published,
    sizes: knownSizes(shoot),
  })
}
