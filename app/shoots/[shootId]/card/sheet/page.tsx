import type { Metadata } from 'next'
import Link from 'next/link'
import { basisOf } from '@/lib/card/own-wish'
import type { Forecast } from '@/lib/model/forecast'
import { ownQuestions } from '../../../../cards/own-questions'
import { OwnRoast } from '../../../../cards/own-roast'
import { MadeFiles } from '../../../../ui/made-files'
import { chosenUnits } from '../../../../units'
import {
  asReadersWouldSee,
  backToSentences,
  pageAnybodyMayRead,
  pdfA4,
  pdfUsLetter,
  theCard,
} from '../../../../words/card'
import { printing, theCardWithSizes } from '../../../../words/working'
import { forecastsOf } from '../../../../worked-out'
import { openCard } from '../../../open-card'
import { CardSheet } from './card-sheet'
import { SizesWhenReady } from './sizes-when-ready'

export const metadata: Metadata = { title: theCard }
export const dynamic = 'force-dynamic'

/** The card as its readers will have it, with the way back for those who make it. */
export default async function CardSheetPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const { shoot, model } = await openCard(shootId)
  const basis = basisOf(shoot, forecastsOf(shoot).get(shoot.cooks[0]?.id ?? '') as Forecast)
  return (
    <main id="main" className="page card-page">
      <MadeFiles what={printing(theCardWithSizes)}>
        <p className="tools mb-4">
          <Link className="textlink" href={`/shoots/${shootId}/card`}>
            {backToSentences}
          </Link>
          <Link className="textlink" href={`/cards/${shootId}`}>
            {shoot.publish?.open ? pageAnybodyMayRead : asReadersWouldSee}
          </Link>
          <a className="textlink" href={`/shoots/${shootId}/card.pdf?paper=A4`}>
            {pdfA4}
          </a>
          <a className="textlink" href={`/shoots/${shootId}/card.pdf?paper=Letter`}>
            {pdfUsLetter}
          </a>
        </p>
      </MadeFiles>
      <CardSheet model={model} sizes={<SizesWhenReady shoot={shoot} />} />
      <OwnRoast basis={basis} questions={ownQuestions(basis)} units={await chosenUnits()} />
    </main>
  )
}
