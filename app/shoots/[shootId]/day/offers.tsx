'use client'
import type { ShootDocument } from '@/lib/plan/shoot'

export interface Offer {
  readonly id: string
  readonly title: string
  readonly words: string
  readonly taken: () => ShootDocument
  readonly left: () => ShootDocument
}
interface OffersProps {
  readonly summary: string
  readonly offers: readonly Offer[]
  readonly act: (words: string, next: ShootDocument) => void
}

/** What the plan could have and has not: one press to take it, one to leave it for good. */
export function Offers({ summary, offers, act }: OffersProps) {
  if (offers.length === 0) return null
  return (
    <details className="mt-4" open>
      <summary>{summary}</summary>
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
              onClick={() => act(`${offer.title} is left out.`, offer.left())}
            >
              Leave
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}
