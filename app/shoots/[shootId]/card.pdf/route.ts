import { buildCard, checkCard } from '@/lib/card/card'
import { cardModel } from '@/lib/export/card'
import type { Forecast } from '@/lib/model/forecast'
import { formatDate } from '@/lib/plan/clock'
import { printCard } from '@/lib/print/render'
import { answer } from '../../../api/border'
import { forecastsOf, openShoot } from '../../../workbench'
import { paperOf, pdfResponse } from '../../pdf-response'

export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot } = await openShoot((await params).shootId)
    const forecasts = forecastsOf(shoot)
    const card = buildCard(shoot, forecasts)
    const forecast = forecasts.get(card.cook) as Forecast
    const model = cardModel(card, checkCard(card, forecasts), { forecast, date: formatDate(shoot) })
    return pdfResponse(await printCard(model, paperOf(request)), `${shoot.title} card`)
  })
