import { recipeJsonLd } from '@/lib/export/recipe-json-ld'
import { answer } from '../../../api/border'
import { fileResponse } from '../../file-response'
import { openCard, videoChapters } from '../../open-card'

/** The recipe as schema.org's JSON-LD. */
export const GET = (_: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shootId } = await params
    const { shoot, model } = await openCard(shootId)
    const { chapters } = await videoChapters(shootId, shoot)
    const text = `${JSON.stringify(recipeJsonLd(model, chapters), null, 2)}\n`
    return fileResponse(text, { name: `${shoot.title} card.json`, type: 'application/ld+json; charset=utf-8' })
  })
