import type { Metadata } from 'next'
import Link from 'next/link'
import { buildCard, checkCard, claimTexts, stepOrder } from '@/lib/card/card'
import type { CheckedClaim, FindingKind } from '@/lib/card/claim'
import { printable } from '@/lib/card/printable-steps'
import { Caution } from '../../../ui/field'
import { ShootHead } from '../../../ui/shoot-head'
import { chosenUnits } from '../../../units'
import { openShoot } from '../../../workbench'
import { forecastsOf } from '../../../worked-out'
import { CardDesk } from './card-desk'

export const metadata: Metadata = { title: 'Card' }
export const dynamic = 'force-dynamic'

export default async function CardPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const open = await openShoot(shootId)
  const units = await chosenUnits()
  const forecasts = forecastsOf(open.shoot)
  const card = buildCard(open.shoot, forecasts)
  const checked = checkCard(card, forecasts)
  return (
    <main id="main" className="page">
      <ShootHead open={open} units={units} page="card" />
      <div className="cols-head">
        <div>
          <h1>{headline(checked)}</h1>
          <p className="lead mt-1">{tally(checked)}</p>
        </div>
        <span className="flex flex-wrap gap-4">
          <Link className="btn main" href={`/shoots/${shootId}/card/sheet`}>
            See the card
          </Link>
          <a className="btn" href={`/shoots/${shootId}/card.pdf?paper=A4`}>
            PDF, A4
          </a>
          <a className="btn" href={`/shoots/${shootId}/card.pdf?paper=Letter`}>
            PDF, US Letter
          </a>
        </span>
      </div>
      <div className="mt-4">
        <CardDesk
          shootId={shootId}
          version={open.version}
          document={open.document}
          steps={claimTexts(card)
            .map((step) => printable(step, checked))
            .filter((step) => step.sentences.length > 0 || step.id === 'title')}
          order={stepOrder(open.shoot, card, forecasts)}
        />
      </div>
      <section aria-label="Cautions on the card" className="mt-8 max-w-3xl">
        <h2>Cautions on the card</h2>
        {card.cautions.map((caution) => (
          <Caution key={caution.code}>{caution.sentence}</Caution>
        ))}
      </section>
    </main>
  )
}

const count = (checked: readonly CheckedClaim[], finding: FindingKind) =>
  checked.filter((claim) => claim.finding === finding).length

function headline(checked: readonly CheckedClaim[]): string {
  const wrong = new Set(checked.filter((claim) => claim.finding === 'contradicted').map((claim) => claim.sentence)).size
  if (wrong === 0) return 'Nothing on the card is contradicted.'
  return wrong === 1 ? 'One sentence on the card is not true yet.' : `${wrong} sentences on the card are not true yet.`
}
function tally(checked: readonly CheckedClaim[]): string {
  const parts = [
    `${count(checked, 'borne-out')} borne out`,
    `${count(checked, 'borne-out-with-care')} with care`,
    `${count(checked, 'contradicted')} contradicted`,
    `${count(checked, 'cannot-be-checked')} cannot be checked`,
  ]
  return `${checked.length} figures and words are claims: ${parts.join(', ')}.`
}
