import { cutOf } from '../model/custom-cut'
import { donenessWarning } from '../model/doneness'
import type { Forecast } from '../model/forecast'
import type { Warning } from '../refusals'
import type { Shoot } from './shoot'

const median = (samples: Float64Array) => Float64Array.from(samples).sort()[Math.floor(samples.length / 2)]

/** Where the word that a cook is aimed at disagrees with what the probe reads when sliced; the card judges the word by the same reading. */
export function targetWarnings(shoot: Shoot, forecasts: ReadonlyMap<string, Forecast>): Warning[] {
  return shoot.cooks.flatMap((cook, i) => {
    const cut = cutOf(cook.roast)
    const forecast = forecasts.get(cook.id)
    const sliced = forecast && median(forecast.atSlice.probeC)
    if (!cook.target || !cut || sliced === undefined || !Number.isFinite(sliced)) return []
    const sentence = donenessWarning(cut, cook.target.doneness, sliced)
    return sentence ? [{ code: 'target-disagrees', path: `/cooks/${i}/target/doneness`, sentence }] : []
  })
}
