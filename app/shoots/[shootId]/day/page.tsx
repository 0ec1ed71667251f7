import type { Metadata } from 'next'
import { Suspense } from 'react'
import type { UnitSystem } from '@/lib/units'
import { announced } from '../../../announced'
import { HeatLine, type HeatLineProps, widestHeatLine } from '../../../ui/heat-line'
import { ShootHead } from '../../../ui/shoot-head'
import { chosenUnits } from '../../../units'
import { layoutReady, type OpenShoot, openShoot } from '../../../workbench'
import { forecastsBehind, forecastsOf } from '../../../worked-out'
import { heatLineInput } from '../../heat-line-input'
import { NoLayout } from '../no-layout'
import { RePlanned } from '../re-planned-line'
import './day.css'
import { curveViewOf } from './curve-view'
import { DayDesk } from './day-desk'
import { dayViewOf } from './day-view'
import type { LanePicture } from './lane-grips'

export const metadata: Metadata = { title: 'Day' }
export const dynamic = 'force-dynamic'

export default async function DayPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const open = await openShoot(shootId)
  const units = await chosenUnits()
  const people = open.shoot.people?.length ?? 0
  return (
    <main id="main" className="page">
      <ShootHead open={open} units={units} page="day" />
      <h1 className="sr-only">The day: {open.shoot.title}</h1>
      <Suspense
        fallback={<p className="lead">{`Laying out ${open.shoot.shots?.length ?? 0} shots, ${people} people.`}</p>}
      >
        <Day open={open} units={units} />
      </Suspense>
    </main>
  )
}

async function Day({ open, units }: { open: OpenShoot; units: UnitSystem }) {
  const laid = await layoutReady(open.shoot)
  const told = laid.ok ? await announced(open.id, laid.layout, open.shoot.zone) : null
  const layout = told?.layout ?? null
  const first = open.shoot.cooks[0]?.id ?? ''
  const forecasts = layout ? forecastsBehind(open.shoot, layout) : null
  const input = layout && forecasts && heatLineInput(open.shoot, forecasts, layout, true, units)
  return (
    <>
      {!laid.ok && <NoLayout problems={laid.problems} />}
      <RePlanned last={told?.last ?? null} zone={open.shoot.zone} />
      <DayDesk
        heatLine={input && <HeatLine {...input} />}
        picture={input && pictureOf(input)}
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

function pictureOf(input: HeatLineProps): LanePicture | null {
  const { width, height, axis, boxes = [] } = widestHeatLine(input)
  return axis ? { size: { width, height }, axis, boxes } : null
}
