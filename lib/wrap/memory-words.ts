import type { CookerMemory } from '../model/cooker-memory'
import { formatRise, kelvins, seconds, type UnitSystem } from '../units'
import { minutesWord } from './words'

/** Less than this is no habit. */
const LEAST_K = 1
const LEAST_SHARE = 0.01

/** "It runs 6 °C under its dial, give or take 3. A roast takes 4 % longer in it. It is steady after 48 minutes." */
export function memorySentence({ level, pace, warmUp }: CookerMemory, units: UnitSystem): string {
  const give = `give or take ${formatRise(kelvins(level.sd), units).replace(/ °.$/, '')}`
  const off = formatRise(kelvins(Math.abs(level.mean)), units)
  const runs =
    Math.abs(level.mean) < LEAST_K
      ? `It keeps to its dial, ${give}.`
      : `It runs ${off} ${level.mean < 0 ? 'under' : 'over'} its dial, ${give}.`
  const share = Math.expm1(pace.mean)
  const takes =
    Math.abs(share) < LEAST_SHARE
      ? []
      : [`A roast takes ${Math.round(Math.abs(share) * 100)} % ${share > 0 ? 'longer' : 'less long'} in it.`]
  const steady = warmUp ? [`It is steady ${minutesWord(seconds(warmUp.mean))} after it is lit.`] : []
  return [runs, ...takes, ...steady].join(' ')
}
