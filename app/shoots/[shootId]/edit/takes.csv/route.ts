import { takeRows, takesCsv } from '@/lib/export/best-takes'
import { answer } from '../../../../api/border'
import { openEdit } from '../../../edit-day'
import { fileResponse } from '../../../file-response'

/** Without it a spreadsheet takes the letters for those of another age. */
const BYTE_ORDER_MARK = '\uFEFF'

export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const { shoot, day, notes } = await openEdit((await params).shootId, new URL(request.url).searchParams.get('day'))
    return fileResponse(BYTE_ORDER_MARK + takesCsv(takeRows(shoot, day), notes[0] ?? null), {
      name: `${shoot.title} takes.csv`,
      type: 'text/csv; charset=utf-8',
    })
  })
