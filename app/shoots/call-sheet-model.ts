import 'server-only'
import { cautionsFor } from '@/lib/card/cautions'
import { type CallSheetModel, callSheetOf } from '@/lib/export/call-sheet'
import { sheetCare } from '@/lib/export/sheet-care'
import { instant, type UnitSystem } from '@/lib/units'
import type { Announced } from '../announced'
import type { OpenShoot } from '../workbench'
import { forecastsBehind } from '../worked-out'
import { minimumLine } from './heat-line-input'

/** Page and paper show the same values. */
export function callSheetModel(
  { shoot, version, savedAt }: OpenShoot,
  { layout, last }: Pick<Announced, 'layout' | 'last'>,
  units: UnitSystem,
): CallSheetModel {
  const forecasts = forecastsBehind(shoot, layout)
  return callSheetOf({
    shoot,
    layout,
    forecasts,
    units,
    // The forecast is made anew for each sheet, by the model of today.
    stamp: { revision: version, saved: savedAt, forecast: instant(Date.now()), rePlanned: last?.at },
    cautions: sheetCare(cautionsFor(shoot, forecasts)),
    minimum: minimumLine(shoot, units),
  })
}
