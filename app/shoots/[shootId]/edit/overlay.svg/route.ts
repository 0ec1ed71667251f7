import { overlaySvg } from '@/lib/export/overlay'
import { overlayFault } from '@/lib/export/overlay-frames'
import { seconds } from '@/lib/units'
import { answer } from '../../../../api/border'
import { openEdit, overlayAsked, refused } from '../../../edit-day'
import { fileResponse } from '../../../file-response'

/** The overlay at the middle of a clip, on a clear ground. */
export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const query = new URL(request.url).searchParams
    const edit = await openEdit((await params).shootId, query.get('day'))
    const { clip, facts, style } = await overlayAsked(edit, query)
    const fault = overlayFault(clip, facts)
    if (fault !== null || !facts) throw refused('/clips', fault ?? '')
    const middle = seconds(((clip.from + clip.to) / 2 - facts.meatOn) / 1000)
    const name = `${edit.shoot.title} ${clip.clip.id}.svg`
    return fileResponse(overlaySvg(facts, middle, style), { name, type: 'image/svg+xml; charset=utf-8' })
  })
