'use client'
import type { ShootDocument } from '@/lib/plan/shoot'
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
    <div className="mt-6">
      <h3>{title}</h3>
      <OfferList offers={offers.slice(0, SHOWN)} act={act} />
      {more.length > 0 && (
        <details>
          <summary>{`${more.length} more on offer`}</summary>
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
            aria-label={`Take ${offer.title}`}
            onClick={() => act(`${offer.title} is taken.`, offer.taken())}
          >
            Take
          </button>
          <button
            type="button"
            className="btn quiet"
            aria-label={`Leave ${offer.title}`}
            onClick={() => act(`${offer.title} is left out.`, offer.left(), '/coverage/left')}
          >
            Leave
          </button>
        </li>
      ))}
    </ul>
  )
}
