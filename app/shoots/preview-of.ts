import 'server-only'
import type { ReadersWay } from '@/lib/plan/as-read'
import type { Shoot } from '@/lib/plan/shoot'
import type { UnitSystem } from '@/lib/units'
import { forecastsOf } from '../worked-out'
import type { Preview } from './preview'
import { previewFrom } from './preview-from'

/** The plan page's pictures and sentences, from the forecasts that the server keeps. */
export const previewOf = (shoot: Shoot, units: UnitSystem, way: ReadersWay): Preview =>
  previewFrom(shoot, forecastsOf(shoot), units, way)
