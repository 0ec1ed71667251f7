'use client'
import type { MomentId } from '@/lib/model/moment-ids'
import { shotsOf } from '@/lib/plan/edit'
import { momentName } from '@/lib/plan/moments'
import { leaveOffer, offersOf, takeOffer } from '@/lib/plan/offers'
import type { ShootDocument } from '@/lib/plan/shoot'
import { listAt } from '@/lib/plan/sketch'
import { offeredShotsTitle } from '../../../words/day'
import type { Act } from '../../use-actions'
import { Offers } from './offers'

interface OffersProps {
  readonly document: ShootDocument
  readonly act: Act
}
type Offer = ReturnType<typeof offersOf>[number]

/** Shots that a long cook needs and crews often miss. */
export function OfferedShots({ document, act }: OffersProps) {
  const tasks = new Set(listAt<{ id: string }>(document, '/tasks').map(({ id }) => id))
  const titles = new Set(shotsOf(document).map(({ title }) => title))
  const offers = offersOf(document).filter(({ id, title }) => !tasks.has(id) && !titles.has(title))
  return (
    <Offers
      title={offeredShotsTitle}
      act={act}
      offers={offers.map((offer) => ({
        id: offer.id,
        title: offer.title,
        words: offerWords(offer),
        taken: () => takeOffer(document, offer),
        left: () => leaveOffer(document, offer),
      }))}
    />
  )
}

/** "between fire lit and meat on, at the cooker, 4 min to set up, 3 min". */
function offerWords(offer: Offer): string {
  const said = offer as { [key: string]: unknown; at?: { moment: MomentId }; between?: readonly MomentId[] }
  const name = (id: unknown) => momentName(id as MomentId, 'kettle-charcoal')
  const when = said.at
    ? `at ${name(said.at.moment)}`
    : said.between
      ? `between ${said.between.map(name).join(' and ')}`
      : said.from
        ? `locked off from ${name(said.from)} to ${name(said.to)}`
        : said.light
          ? `in ${String(said.light).replaceAll('-', ' ')}`
          : 'any time'
  const parts = [
    when,
    said.state && `food ${said.state}`,
    said.place && `at the ${said.place}`,
    said.setup && `${said.setup} to set up`,
    said.roll && `rolls ${said.roll}`,
  ]
  return parts.filter(Boolean).join(', ')
}
