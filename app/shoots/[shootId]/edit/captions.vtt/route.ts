import { captionsOf } from '@/lib/export/captions'
import { webVtt } from '@/lib/export/webvtt'
import { answer } from '../../../../api/border'
import { chosenUnits } from '../../../../units'
import { openEdit } from '../../../edit-day'
import { fileResponse } from '../../../file-response'

export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot, day, notes, invented } = await openEdit(
      (await params).shootId,
      new URL(request.url).searchParams.get('day'),
    )
    const cues = captionsOf(shoot, day, await chosenUnits())
    // A player shows no notes: what was invented says so in each caption.
    const said = invented ? cues.map((cue) => ({ ...cue, text: `${cue.text}\nInvented readings` })) : cues
    return fileResponse(webVtt(said, notes), { name: `${shoot.title} captions.vtt`, type: 'text/vtt; charset=utf-8' })
  })
