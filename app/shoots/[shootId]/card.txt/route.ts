import { cardText } from '@/lib/export/card-text'
import { answer } from '../../../api/border'
import { fileResponse } from '../../file-response'
import { openWholeCard } from '../../open-card'

export const GET = (_: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot, model } = await openWholeCard((await params).shootId)
    return fileResponse(cardText(model), { name: `${shoot.title} card.txt`, type: 'text/plain; charset=utf-8' })
  })
