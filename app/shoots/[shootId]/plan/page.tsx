import type { Metadata } from 'next'
import { Suspense } from 'react'
import type { UnitSystem } from '@/lib/units'
import { readersWay } from '../../../locale'
import { ShootHead } from '../../../ui/shoot-head'
import { Working } from '../../../ui/working'
import { chosenUnits } from '../../../units'
import { pageTitle } from '../../../words/plan'
import { forecasting, lastsHere } from '../../../words/working'
import { openShoot, savedShoot } from '../../../workbench'
import { previewOf } from '../../preview-of'
import { rememberedCookers } from '../../remembered-cookers'
import { PlanDesk } from './plan-desk'

export const metadata: Metadata = { title: pageTitle }
export const dynamic = 'force-dynamic'

export default async function PlanPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const saved = await savedShoot(shootId)
  const units = await chosenUnits()
  return (
    <main id="main" className="page">
      <ShootHead open={saved} units={units} page="plan" />
      <Suspense fallback={<Working what={forecasting} lasts={lastsHere} />}>
        <Plan shootId={shootId} units={units} />
      </Suspense>
    </main>
  )
}

async function Plan({ shootId, units }: { shootId: string; units: UnitSystem }) {
  const open = await openShoot(shootId)
  return (
    <PlanDesk
      key={units}
      shootId={shootId}
      version={open.version}
      document={open.document}
      first={previewOf(open.shoot, units, await readersWay())}
      cookers={await rememberedCookers(units)}
    />
  )
}
