import type { Metadata } from 'next'
import { ShootHead } from '../../../ui/shoot-head'
import { chosenUnits } from '../../../units'
import { openShoot } from '../../../workbench'
import { previewOf } from '../../preview-of'
import { rememberedCookers } from '../../remembered-cookers'
import { PlanDesk } from './plan-desk'

export const metadata: Metadata = { title: 'Plan' }
export const dynamic = 'force-dynamic'

export default async function PlanPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const open = await openShoot(shootId)
  const units = await chosenUnits()
  return (
    <main id="main" className="page">
      <ShootHead open={open} units={units} page="plan" />
      <PlanDesk
        key={units}
        shootId={shootId}
        version={open.version}
        document={open.document}
        first={previewOf(open.shoot, units)}
        cookers={await rememberedCookers(units)}
      />
    </main>
  )
}
