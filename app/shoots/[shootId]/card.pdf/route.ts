import { printCard } from '@/lib/print/render'
import { answer } from '../../../api/border'
import { openWholeCard } from '../../open-card'
import { cardPaperOf, pdfResponse } from '../../pdf-response'

export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot, model } = await openWholeCard((await params).shootId)
    return pdfResponse(await printCard(model, cardPaperOf(request)), `${shoot.title} card`)
  })
