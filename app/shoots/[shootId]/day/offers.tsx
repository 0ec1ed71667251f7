'use client'
import { momentName } from '@/lib/plan/moments'
import { leaveOffer, offersOf, takeOffer } from '@/lib/plan/offers'
import type { ShootDocument } from '@/lib/plan/shoot'
import { Folded } from '../../../ui/folded'
import { formOf } from './shot-fields'

interface OffersProps {
  document: ShootDocument
  change: (document: ShootDocument) => void
}
type Offer = ReturnType<typeof offersOf>[number]

/** Shots that this plan could have and has not; one tap takes one, one leaves it for good. */
export function Offers({ document, change }: OffersProps) {
  const offers = offersOf(document)
  if (offers.length === 0) return null
  return (
    <Folded summary={`Shots often missed: ${offers.length} offered`} fault={false}>
      {offers.map((offer) => (
        <p key={offer.id} className="flex flex-wrap items-center gap-x-4 border-b border-rule py-2">
          <span className="min-w-0 flex-1 basis-60">
            {offer.title}
            <span className="small block">{wordsOf(offer)}</span>
          </span>
          <button type="button" className="btn" onClick={() => change(takeOffer(document, offer))}>
            Take <span className="sr-only">{offer.title}</span>
          </button>
          <button type="button" className="textlink" onClick={() => change(leaveOffer(document, offer))}>
            Leave <span className="sr-only">{offer.title}</span>
          </button>
        </p>
      ))}
    </Folded>
  )
}

const name = (edge: unknown) => momentName(edge as Parameters<typeof momentName>[0], 'kettle-charcoal')

/** "between off the heat and first slice, 3 min to set up, rolls 2 min, cooker, lid shut". */
function wordsOf(offer: Offer): string {
  const { at, between, from, to, setup, roll, place, state, lid } = offer as Offer & {
    at?: { moment: string }
    between?: readonly string[]
  }
  const when = {
    at: `at ${name(at?.moment)}`,
    between: `between ${name(between?.[0])} and ${name(between?.[1])}`,
    locked: `locked off, ${name(from)} to ${name(to)}`,
    free: state ? `food ${state}` : 'any time',
    light: 'in the light',
  }[formOf(offer)]
  return [when, setup && `${setup} to set up`, roll && `rolls ${roll}`, place, lid && lid !== 'any' && `lid ${lid}`]
    .filter(Boolean)
    .join(', ')
}
