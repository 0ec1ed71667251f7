import { buildCard, checkCard } from '@/lib/card/card'
import { cardModel } from '@/lib/export/card'
import { formatDate } from '@/lib/plan/clock'
import { printCard } from '@/lib/print/render'
import { forecastsOf, openShoot } from '../../../workbench'
import { paperOf, pdfResponse } from '../../pdf-response'

export async function GET(request: Request, { params }: { params: Promise<{ shootId: string }> }) {
  const { shoot } = await openShoot((await params).shootId)
  const forecasts = forecastsOf(shoot)
  const card = buildCard(shoot, forecasts)
  const forecast = forecasts.get(card.cook)
  if (!forecast) throw new RangeError(`no forecast for ${card.cook}`)
  const model = cardModel(card, checkCard(card, forecasts), {
    forecast,
    date: formatDate(shoot),
  })
  return pdfResponse(await printCard(model, paperOf(request)), `${shoot.title} card`)
}
