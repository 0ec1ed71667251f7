import type { Metadata } from 'next'
import Link from 'next/link'
import { newShootDocument } from '@/lib/plan/new-shoot'
import { parseShoot } from '@/lib/plan/parse'
import { UnitsButton } from '../../ui/units-button'
import { chosenUnits } from '../../units'
import { forecastsReady } from '../../workbench'
import { previewOf } from '../preview-of'
import { rememberedCookers } from '../remembered-cookers'
import { NewShoot } from './new-shoot'

export const metadata: Metadata = { title: 'New shoot' }
export const dynamic = 'force-dynamic'

const DAYS_AHEAD = 14

/** A plan to start from; every field of it is there to be changed. */
const template = (date: string) =>
  newShootDocument({
    title: 'New shoot',
    cut: 'lamb-leg-bone-in',
    mass: '3.2 kg',
    cooker: 'kettle-charcoal',
    cookerAt: '150 °C',
    probe: 'turn',
    pull: '46 °C',
    sear: { at: '320 °C', off: '52 °C' },
    rest: '15 min',
    slice: { at: '18:30' },
    date,
    zone: 'Europe/Dublin',
    place: { lat: 53.35, lon: -6.26, altitude: '20 m' },
  })

export default async function NewShootPage() {
  const units = await chosenUnits()
  const date = new Date(Date.now() + DAYS_AHEAD * 86_400_000).toISOString().slice(0, 10)
  const document = template(date)
  const parsed = parseShoot(document)
  if (!parsed.ok) throw new Error(`The starting plan does not read: ${parsed.problems[0]?.sentence}`)
  await forecastsReady(parsed.value)
  return (
    <main id="main" className="page">
      <header className="head">
        <Link href="/" className="small" aria-label="All shoots">
          Shoots
        </Link>
        <span className="name">New shoot</span>
        <UnitsButton units={units} />
      </header>
      <NewShoot
        key={units}
        template={document}
        first={previewOf(parsed.value, units)}
        cookers={await rememberedCookers(units)}
      />
    </main>
  )
}
