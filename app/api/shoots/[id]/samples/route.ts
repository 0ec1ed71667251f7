import { BorderError } from '@/lib/data/border-error'
import { loadShoot } from '@/lib/data/load-shoot'
import { packForecasts } from '@/lib/day/forecast-bytes'
import { parseShoot } from '@/lib/plan/parse'
import { forecastsReady } from '../../../../workbench'
import { forecastsOf, rememberedLayout } from '../../../../worked-out'
import { answer, valueOrRefuse } from '../../../border'

export const dynamic = 'force-dynamic'

/** Joint moments and probe of every cook, with the lid as the day last opened it, so that a browser can try a day out; fetched once, on the first edit. */
export const GET = (_request: Request, { params }: { params: Promise<{ id: string }> }) =>
  answer(async () => {
    const saved = await loadShoot((await params).id)
    if (!saved) throw new BorderError('not-found')
    const shoot = valueOrRefuse(parseShoot(saved.document))
    await forecastsReady(shoot)
    const bytes = packForecasts(forecastsOf(shoot, rememberedLayout(shoot)?.lidOpenings))
    return new Response(bytes, {
      headers: { 'content-type': 'application/octet-stream', 'cache-control': 'no-store' },
    })
  })
