import { answer } from '../../../api/border'
import { printedBeside } from '../../../print-pool'
import { openWholeCard } from '../../open-card'
import { cardPaperOf, pdfResponse } from '../../pdf-response'

export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot, model } = await openWholeCard((await params).shootId)
    const pdf = await printedBeside(shoot, { card: model, paper: cardPaperOf(request) })
    return pdfResponse(pdf, `${shoot.title} card`)
  })
