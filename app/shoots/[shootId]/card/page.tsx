import type { Metadata } from 'next'
import Link from 'next/link'
import { Suspense } from 'react'
import { buildCard, checkCard, claimTexts, stepOrder } from '@/lib/card/card'
import type { CheckedClaim } from '@/lib/card/claim'
import { printable } from '@/lib/card/printable-steps'
import { SOURCES, type SourceId } from '@/lib/model/sources'
import { Caution } from '../../../ui/field'
import { ShootHead } from '../../../ui/shoot-head'
import { WithTerms } from '../../../ui/with-terms'
import { Working } from '../../../ui/working'
import { chosenUnits } from '../../../units'
import { checkingCard, lastsHere } from '../../../words/working'
import { openShoot, savedShoot } from '../../../workbench'
import { forecastsOf } from '../../../worked-out'
import { cardFactsOf } from '../../card-facts'
import { INVENTED, type WhichDay, whichDay } from '../../day-log'
import { publishedOf } from '../../published-at'
import { CardDesk } from './card-desk'
import { CardFiles, StillNeeded } from './files'
import { headline, judges, tally } from './tally'
import './card-desk.css'
import { cardWords, cautionsOnCard, lookAtRehearsedDay, noDayHasBeenFilmed, seeCard } from '../../../words/card'

export const metadata: Metadata = { title: cardWords }
export const dynamic = 'force-dynamic'

interface CardPageProps {
  params: Promise<{ shootId: string }>
  searchParams: Promise<{ day?: string | string[] }>
}

export default async function CardPage({ params, searchParams }: CardPageProps) {
  const { shootId } = await params
  const saved = await savedShoot(shootId)
  return (
    <main id="main" className="page">
      <ShootHead open={saved} units={await chosenUnits()} page="card" />
      <Suspense fallback={<Working what={checkingCard} lasts={lastsHere} />}>
        <Checked shootId={shootId} which={whichDay((await searchParams).day)} />
      </Suspense>
    </main>
  )
}

async function Checked({ shootId, which }: { shootId: string; which: WhichDay }) {
  const open = await openShoot(shootId)
  const forecasts = forecastsOf(open.shoot)
  const card = buildCard(open.shoot, forecasts)
  const { facts, invented } = await cardFactsOf(shootId, open.shoot, which)
  const checked = checkCard(card, forecasts, facts)
  return (
    <>
      <div className="cols-head">
        <div>
          <h1>{headline(checked)}</h1>
          <p className="lead mt-1">
            <WithTerms text={tally(checked)} of={{ claim: 'claims', finding: 'borne out' }} />
          </p>
          <p className="small mt-1">
            {judges(checked)} {facts === null && noDayHasBeenFilmed}
            {facts === null && !invented && (
              <Link className="textlink" href={`/shoots/${shootId}/card?day=rehearsed`}>
                {lookAtRehearsedDay}
              </Link>
            )}
          </p>
          {invented && <Caution>{INVENTED}</Caution>}
        </div>
        <Link className="btn main" href={`/shoots/${shootId}/card/sheet`}>
          {seeCard}
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
      <section aria-label={cautionsOnCard} className="mt-10">
        <h2>{cautionsOnCard}</h2>
        <div className="cautions mt-2">
          {card.cautions.map((caution) => (
            <Caution key={caution.code}>{caution.sentence}</Caution>
          ))}
        </div>
      </section>
    </>
  )
}

/** The publications that the findings name, in full. */
const sourcesOf = (checked: readonly CheckedClaim[]): Record<string, string> =>
  Object.fromEntries(
    checked.flatMap(({ source }) => (source in SOURCES ? [[source, SOURCES[source as SourceId].reference]] : [])),
  )
