import { cardMarkdown } from '@/lib/export/card-markdown'
import { answer } from '../../../api/border'
import { fileResponse } from '../../file-response'
import { openWholeCard } from '../../open-card'

export const GET = (_: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot, model } = await openWholeCard((await params).shootId)
    return fileResponse(cardMarkdown(model), { name: `${shoot.title} card.md`, type: 'text/markdown; charset=utf-8' })
  })
