import 'server-only'
import type { Layout } from '@/lib/day/layout'
import { type PrepList, prepListOf } from '@/lib/export/prep-list'
import { type RiskSheet, riskSheetOf } from '@/lib/export/risk-sheet'
import { type FuelSummary, fuelSummary } from '@/lib/model/fuel-need'
import type { Shoot } from '@/lib/plan/shoot'
import type { UnitSystem } from '@/lib/units'
import type { OpenShoot } from '../workbench'
import { forecastsOf } from '../worked-out'

/** Page and paper show the same values. */
export const prepModel = ({ shoot, version }: OpenShoot, layout: Layout, units: UnitSystem): PrepList =>
  prepListOf({ shoot, layout, units, revision: version, fuel: fuelOf(shoot) })

const fuelOf = (shoot: Shoot): ReadonlyMap<string, FuelSummary> =>
  new Map(
    [...forecastsOf(shoot)].flatMap(([id, forecast]) => {
      const fuel = fuelSummary(forecast)
      return fuel ? [[id, fuel] as const] : []
    }),
  )
export const riskModel = ({ shoot, version }: OpenShoot, layout: Layout, units: UnitSystem): RiskSheet =>
  riskSheetOf({ shoot, layout, units, revision: version })
