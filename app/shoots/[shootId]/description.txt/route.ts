import { videoDescription } from '@/lib/export/video-description'
import { answer } from '../../../api/border'
import { INVENTED, whichDay } from '../../day-log'
import { fileResponse } from '../../file-response'
import { openCard, videoChapters } from '../../open-card'

/** The words under the video. */
export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shootId } = await params
    const { shoot, model } = await openCard(shootId)
    const asked = whichDay(new URL(request.url).searchParams.get('day'))
    const { chapters, invented } = await videoChapters(shootId, shoot, asked)
    const text = `${invented ? `${INVENTED}\n\n` : ''}${videoDescription(model, chapters)}`
    return fileResponse(text, { name: `${shoot.title} description.txt`, type: 'text/plain; charset=utf-8' })
  })
