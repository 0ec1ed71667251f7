import { printCard } from '@/lib/print/render'
import { answer } from '../../../api/border'
import { openShoot } from '../../../workbench'
import { cardModelOf } from '../../card-model'
import { paperOf, pdfResponse } from '../../pdf-response'

export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot } = await openShoot((await params).shootId)
    return pdfResponse(await printCard(cardModelOf(shoot), paperOf(request)), `${shoot.title} card`)
  })
