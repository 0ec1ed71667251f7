import type { Metadata } from 'next'
import Link from 'next/link'
import { startingShoot } from '@/lib/plan/new-shoot'
import { parseShoot } from '@/lib/plan/parse'
import { type Around, SAMPLES, sampleFor } from '@/lib/plan/samples'
import { readersWay } from '../../locale'
import { HelpLink } from '../../ui/help-link'
import { UnitsButton } from '../../ui/units-button'
import { chosenUnits } from '../../units'
import { allShoots, shoots } from '../../words/shared'
import { newShoot } from '../../words/start'
import { forecastsReady } from '../../workbench'
import { previewOf } from '../preview-of'
import { rememberedCookers } from '../remembered-cookers'
import { lastPlace } from './last-place'
import { NewShoot } from './new-shoot'

export const metadata: Metadata = { title: newShoot }
export const dynamic = 'force-dynamic'

const DAYS_AHEAD = 14
const dayAhead = () => new Date(Date.now() + DAYS_AHEAD * 86_400_000).toISOString().slice(0, 10)

export default async function NewShootPage({ searchParams }: { searchParams: Promise<{ from?: string | string[] }> }) {
  const units = await chosenUnits()
  const around: Around = { date: dayAhead(), ...(await lastPlace()) }
  const asked = (await searchParams).from
  const from = SAMPLES.find(({ id }) => id === asked)?.id ?? null
  const usual = startingShoot(
    { ...around, title: newShoot, cut: 'lamb-leg-bone-in', cooker: 'kettle-charcoal', slice: { at: '18:30' } },
    units,
  )
  const document = from ? sampleFor(from, usual) : usual
  const parsed = parseShoot(document)
  if (!parsed.ok) throw new Error(`The starting plan does not read: ${parsed.problems[0]?.sentence}`)
  await forecastsReady(parsed.value)
  return (
    <main id="main" className="page">
      <header className="head">
        <Link href="/" className="small" aria-label={allShoots}>
          {shoots}
        </Link>
        <span className="name">{newShoot}</span>
        <UnitsButton units={units} />
        <HelpLink page="plan" />
      </header>
      <NewShoot
        key={`${units}/${from}`}
        template={document}
        from={from}
        first={previewOf(parsed.value, units, await readersWay())}
        samples={SAMPLES.map(({ id, title, says }) => ({ id, title, says }))}
        cookers={await rememberedCookers(units)}
      />
    </main>
  )
}
