import { chaptersOf } from '@/lib/export/chapters'
import { webVtt } from '@/lib/export/webvtt'
import { answer } from '../../../../api/border'
import { openEdit } from '../../../edit-day'
import { fileResponse } from '../../../file-response'

export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot, day, notes } = await openEdit((await params).shootId, new URL(request.url).searchParams.get('day'))
    const cues = chaptersOf(shoot, day).map(({ startS, endS, title }) => ({ startS, endS, text: title }))
    return fileResponse(webVtt(cues, notes), { name: `${shoot.title} chapters.vtt`, type: 'text/vtt; charset=utf-8' })
  })
