import type { Metadata } from 'next'
import { Suspense } from 'react'
import type { UnitSystem } from '@/lib/units'
import { announced } from '../../../announced'
import { readersWay } from '../../../locale'
import { pagePictures } from '../../../ui/heat-line'
import { ShootHead } from '../../../ui/shoot-head'
import { Working } from '../../../ui/working'
import { chosenUnits } from '../../../units'
import { day, theDayOf } from '../../../words/day'
import { laidOutFirst } from '../../../words/start'
import { lastsHere, layingOut } from '../../../words/working'
import { layoutReady, openShoot, savedShoot } from '../../../workbench'
import { forecastsBehind, forecastsOf } from '../../../worked-out'
import { heatLineInput } from '../../heat-line-input'
import { heatOnTheDay } from '../../heat-on-the-day'
import { NoLayout } from '../no-layout'
import { RePlanned } from '../re-planned-line'
import './day.css'
import { curveViewOf } from './curve-view'
import { DayDesk } from './day-desk'
import { dayViewOf } from './day-view'

export const metadata: Metadata = { title: day }
export const dynamic = 'force-dynamic'

export default async function DayPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const saved = await savedShoot(shootId)
  const units = await chosenUnits()
  const { shots = [], people = [], title } = saved.shoot
  return (
    <main id="main" className="page">
      <ShootHead open={saved} units={units} page="day" />
      <h1 className="sr-only">{theDayOf(title)}</h1>
      <Suspense fallback={<Working what={layingOut(shots.length, people.length)} lasts={lastsHere} />}>
        <Day shootId={shootId} units={units} />
      </Suspense>
    </main>
  )
}

async function Day({ shootId, units }: { shootId: string; units: UnitSystem }) {
  const open = await openShoot(shootId)
  const laid = await layoutReady(open.shoot)
  const told = laid.ok ? await announced(open.id, laid.layout, open.shoot.zone) : null
  const layout = told?.layout ?? null
  const first = open.shoot.cooks[0]?.id ?? ''
  const forecasts = layout ? forecastsBehind(open.shoot, layout) : null
  const input = layout && forecasts && heatLineInput(open.shoot, forecasts, layout, true, units, await readersWay())
  const heat = input && (await heatOnTheDay(open, layout, forecasts, input, units))
  return (
    <>
      {!laid.ok && <NoLayout problems={laid.problems} />}
      {open.version === 1 && layout && <p className="lead mb-4">{laidOutFirst}</p>}
      <RePlanned last={told?.last ?? null} zone={open.shoot.zone} />
      <DayDesk
        heatLine={input && heat && pagePictures(heat, input)}
        shootId={open.id}
        version={open.version}
        document={open.document}
        view={layout && forecasts && dayViewOf(open.shoot, layout, forecasts, units)}
        curve={layout && curveViewOf(open.shoot, forecastsOf(open.shoot, layout.lidOpenings).get(first), layout)}
        units={units}
      />
    </>
  )
}
