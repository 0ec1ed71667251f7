import { cardMarkdown } from '@/lib/export/card-markdown'
import { answer } from '../../../api/border'
import { fileResponse } from '../../file-response'
import { openCard } from '../../open-card'

export const GET = (_: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot, model } = await openCard((await params).shootId)
    return fileResponse(cardMarkdown(model), { name: `${shoot.title} card.md`, type: 'text/markdown; charset=utf-8' })
  })
