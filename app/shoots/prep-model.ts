import 'server-only'
import type { Layout } from '@/lib/day/layout'
import { type PrepList, prepListOf } from '@/lib/export/prep-list'
import { type RiskSheet, riskSheetOf } from '@/lib/export/risk-sheet'
import type { UnitSystem } from '@/lib/units'
import type { OpenShoot } from '../workbench'

/** Page and paper show the same values. */
export const prepModel = ({ shoot, version }: OpenShoot, layout: Layout, units: UnitSystem): PrepList =>
  prepListOf({ shoot, layout, units, revision: version })
export const riskModel = ({ shoot, version }: OpenShoot, layout: Layout, units: UnitSystem): RiskSheet =>
  riskSheetOf({ shoot, layout, units, revision: version })
