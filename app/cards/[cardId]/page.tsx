import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { notFound } from 'next/navigation'
import { basisOf } from '@/lib/card/own-wish'
import { maySee } from '@/lib/data/door/access'
import { visitorOf } from '@/lib/data/door/visitor'
import { loadShoot } from '@/lib/data/load-shoot'
import { inScript, recipeJsonLd } from '@/lib/export/recipe-json-ld'
import type { Forecast } from '@/lib/model/forecast'
import { parseShoot } from '@/lib/plan/parse'
import { CardSheet } from '../../shoots/[shootId]/card/sheet/card-sheet'
import { SizesWhenReady } from '../../shoots/[shootId]/card/sheet/sizes-when-ready'
import { cardFactsOf } from '../../shoots/card-facts'
import { cardModelOf } from '../../shoots/card-model'
import { videoChapters } from '../../shoots/open-card'
import { publishedOf } from '../../shoots/published-at'
import { chosenUnits } from '../../units'
import { openShoot } from '../../workbench'
import { forecastsOf } from '../../worked-out'
import { ownQuestions } from '../own-questions'
import { OwnRoast } from '../own-roast'

type Props = { params: Promise<{ cardId: string }> }
export const dynamic = 'force-dynamic'

/** Whose card is not open to everybody is there for its own crew only, and for others not at all. */
async function openCardOf(id: string) {
  if (!maySee(await visitorOf(await headers()), id)) {
    const saved = await loadShoot(id)
    const parsed = saved && parseShoot(saved.document)
    if (!parsed?.ok || parsed.value.publish?.open !== true) notFound()
  }
  const { shoot } = await openShoot(id)
  const { facts } = await cardFactsOf(id, shoot)
  return { shoot, model: cardModelOf(shoot, await publishedOf(id, shoot), facts) }
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { model } = await openCardOf((await params).cardId)
  return { title: model.title, ...(model.intro ? { description: model.intro } : {}) }
}

/** The card for everybody who cooks from it. Nothing of the day or the crew is in it. */
export default async function ReaderCardPage({ params }: Props) {
  const { cardId } = await params
  const { shoot, model } = await openCardOf(cardId)
  const basis = basisOf(shoot, forecastsOf(shoot).get(shoot.cooks[0]?.id ?? '') as Forecast)
  const { chapters } = await videoChapters(cardId, shoot)
  return (
    <main id="main" className="page card-page">
      <script
        type="application/ld+json"
        // biome-ignore lint/security/noDangerouslySetInnerHtml: `inScript` leaves nothing in it that ends the script
        dangerouslySetInnerHTML={{ __html: inScript(recipeJsonLd(model, chapters)) }}
      />
      <CardSheet model={model} sizes={<SizesWhenReady shoot={shoot} />} />
      <OwnRoast basis={basis} questions={ownQuestions(basis)} units={await chosenUnits()} />
    </main>
  )
}
