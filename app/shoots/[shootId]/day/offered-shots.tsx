'use client'
import type { MomentId } from '@/lib/model/moment-ids'
import { momentName } from '@/lib/plan/moments'
import { leaveOffer, offersOf, takeOffer } from '@/lib/plan/offers'
import type { ShootDocument } from '@/lib/plan/shoot'

interface OffersProps {
  readonly document: ShootDocument
  readonly act: (words: string, next: ShootDocument) => void
}
type Offer = ReturnType<typeof offersOf>[number]

/** Shots that a long cook needs and crews often miss; one press each. */
export function OfferedShots({ document, act }: OffersProps) {
  const offers = offersOf(document)
  if (offers.length === 0) return null
  return (
    <details className="mt-4" open={offers.length <= 16}>
      <summary>{`Often missed on a long cook: ${offers.length} ${offers.length === 1 ? 'shot' : 'shots'} on offer`}</summary>
      <ul className="offers">
        {offers.map((offer) => (
          <li key={offer.id}>
            <span>
              <b>{offer.title}</b>
              <span className="small block">{offerWords(offer)}</span>
            </span>
            <button
              type="button"
              className="btn"
              aria-label={`Take ${offer.title}`}
              onClick={() => act(`${offer.title} is taken.`, takeOffer(document, offer))}
            >
              Take
            </button>
            <button
              type="button"
              className="btn quiet"
              aria-label={`Leave ${offer.title}`}
              onClick={() => act(`${offer.title} is left out.`, leaveOffer(document, offer))}
            >
              Leave
            </button>
          </li>
        ))}
      </ul>
    </details>
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
