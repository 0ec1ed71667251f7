import type { Metadata } from 'next'
import Link from 'next/link'
import { buildCard, checkCard, claimTexts, stepOrder } from '@/lib/card/card'
import type { CheckedClaim } from '@/lib/card/claim'
import { printable } from '@/lib/card/printable-steps'
import { SOURCES, type SourceId } from '@/lib/model/sources'
import { Caution } from '../../../ui/field'
import { ShootHead } from '../../../ui/shoot-head'
import { chosenUnits } from '../../../units'
import { openShoot } from '../../../workbench'
import { forecastsOf } from '../../../worked-out'
import { cardFactsOf } from '../../card-facts'
import { INVENTED, whichDay } from '../../day-log'
import { publishedOf } from '../../published-at'
import { CardDesk } from './card-desk'
import { CardFiles, StillNeeded } from './files'
import { headline, judges, tally } from './tally'

export const metadata: Metadata = { title: 'Card' }
export const dynamic = 'force-dynamic'

interface CardPageProps {
  params: Promise<{ shootId: string }>
  searchParams: Promise<{ day?: string | string[] }>
}

export default async function CardPage({ params, searchParams }: CardPageProps) {
  const { shootId } = await params
  const open = await openShoot(shootId)
  const units = await chosenUnits()
  const forecasts = forecastsOf(open.shoot)
  const card = buildCard(open.shoot, forecasts)
  const { facts, invented } = await cardFactsOf(shootId, open.shoot, whichDay((await searchParams).day))
  const checked = checkCard(card, forecasts, facts)
  return (
    <main id="main" className="page">
      <ShootHead open={open} units={units} page="card" />
      <div className="cols-head">
        <div>
          <h1>{headline(checked)}</h1>
          <p className="lead mt-1">{tally(checked)}</p>
          <p className="small mt-1">
            {judges(checked)} {facts === null && 'No day has been filmed yet. '}
            {facts === null && !invented && (
              <Link className="textlink" href={`/shoots/${shootId}/card?day=rehearsed`}>
                Look at it with a rehearsed day
              </Link>
            )}
          </p>
          {invented && <Caution>{INVENTED}</Caution>}
        </div>
        <Link className="btn main" href={`/shoots/${shootId}/card/sheet`}>
          See the card
        </Link>
      </div>
      <StillNeeded published={await publishedOf(shootId, open.shoot)} servings={open.shoot.card?.serves ?? null} />
      <CardFiles shootId={shootId} />
      <div className="mt-4">
        <CardDesk
          shootId={shootId}
          version={open.version}
          document={open.document}
          sources={sourcesOf(checked)}
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

/** The publications that the findings name, in full. */
const sourcesOf = (checked: readonly CheckedClaim[]): Record<string, string> =>
  Object.fromEntries(
    checked.flatMap(({ source }) => (source in SOURCES ? [[source, SOURCES[source as SourceId].reference]] : [])),
  )
