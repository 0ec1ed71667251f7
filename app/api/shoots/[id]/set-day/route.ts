import { requireShoot } from '@/lib/data/load-log'
import { lastErasure } from '@/lib/data/person/erasure-version'
import { instant } from '@/lib/units'
import { liveDay } from '../../../../live/live-days'
import type { SetOpening } from '../../../../set/set-feed'
import { answer } from '../../../border'

export const dynamic = 'force-dynamic'

/** All that a screen of the set needs to open, and to go on alone when it is cut off. Times are milliseconds. */
export const GET = (_request: Request, { params }: { params: Promise<{ id: string }> }) =>
  answer(async () => {
    const { id } = await params
    await requireShoot(id)
    const live = liveDay(id)
    const { version, document, shoot, layout, session } = await live.opened()
    const latest = await live.latest()
    const { start, meatOn, lidOpenings } = layout
    const opening: SetOpening = {
      version,
      day: session,
      forecast: latest && { id: latest.id, at: latest.at, forecast: latest.forecast },
      people: (shoot.people ?? []).map(({ id: person, name, roles }) => ({ id: person, name, roles })),
      plan: { document, layout: { start, meatOn, lidOpenings } },
      state: await live.state(),
      now: instant(Date.now()),
      erased: await lastErasure(id),
    }
    return Response.json(opening, { headers: { 'cache-control': 'no-store' } })
  })
