'use client'
import type { ShootDocument } from '@/lib/plan/shoot'
import { leave, leaveWords, moreOnOffer, take, takeWords } from '../../../words/day'
import type { Act } from '../../use-actions'

export interface Offer {
  readonly id: string
  readonly title: string
  readonly words: string
  readonly taken: () => ShootDocument
  readonly left: () => ShootDocument
}
interface OffersProps {
  readonly title: string
  readonly offers: readonly Offer[]
  readonly act: Act
}

/** So many are shown at once; the rest are folded away. */
const SHOWN = 6

/** What the plan could have and has not: one press to take it, one to leave it for good. */
export function Offers({ title, offers, act }: OffersProps) {
  if (offers.length === 0) return null
  const more = offers.slice(SHOWN)
  return (
    <div className="no-print mt-6">
      <h3>{title}</h3>
      <OfferList offers={offers.slice(0, SHOWN)} act={act} />
      {more.length > 0 && (
        <details>
          <summary>{moreOnOffer(more.length)}</summary>
          <OfferList offers={more} act={act} />
        </details>
      )}
    </div>
  )
}

function OfferList({ offers, act }: Pick<OffersProps, 'offers' | 'act'>) {
  return (
    <ul className="offers">
      {offers.map((offer) => (
        <li key={offer.id}>
          <span>
            <b>{offer.title}</b>
            <span className="small block">{offer.words}</span>
          </span>
          <button
            type="button"
            className="btn"
            aria-label={takeWords(offer.title)}
            onClick={() => act(`${offer.title} is taken.`, offer.taken())}
          >
            {take}
          </button>
          <button
            type="button"
            className="btn quiet"
            aria-label={leaveWords(offer.title)}
            onClick={() => act(`${offer.title} is left out.`, offer.left(), '/coverage/left')}
          >
            {leave}
          </button>
        </li>
      ))}
    </ul>
  )
}
